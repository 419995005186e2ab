/** The same content is the same, however it lies in the folder; paths are what they are. */
import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { digestOf } from '../../src/history/node/digest.ts'
import { readHistory } from '../../src/history/node/read.ts'
import { contentStateOf } from '../../src/history/state.ts'
import { historyOf, known, makeRepository, repositoryIn, temporaryFolder } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-leak.md'
const DATA = 'records/runs/2026-03/2026-03-02-leak.csv'

it('a checkout with CRLF has changed nothing', async () => {
  const origin = makeRepository()
  origin.commit('add run', { [RUN]: 'one\ntwo\n' })
  const to = temporaryFolder()
  execFileSync('git', ['clone', '-q', '-c', 'core.autocrlf=true', origin.top, to], { stdio: 'pipe' })
  expect(readFileSync(join(to, RUN), 'utf8')).toBe('one\r\ntwo\r\n')
  const windows = repositoryIn(to)
  expect(await historyOf(windows)).toEqual(await historyOf(origin))
  expect((await known(to)).digests).toEqual((await known(origin.top)).digests)
  // Saved anew with the same text, so that git has to look at it again.
  windows.write(RUN, 'one\r\ntwo\r\n')
  expect((await known(to)).uncommitted.size).toBe(0)
  windows.write(RUN, 'one\r\nthree\r\n')
  const edited = await known(to)
  expect([...edited.uncommitted]).toEqual([[RUN, 'changed']])
  // printf 'one\nthree\n' | git hash-object --stdin
  expect(edited.blobs.get(RUN)).toBe(
    execFileSync('git', ['hash-object', '--stdin'], { input: 'one\nthree\n', encoding: 'utf8' }).trim(),
  )
})

it('a logger file kept elsewhere (large file storage) stays its pointer, in store and folder', async () => {
  const pointer = `version https://git-lfs.github.com/spec/v1\noid sha256:${'a'.repeat(64)}\nsize 12345\n`
  const repository = makeRepository()
  repository.commit('add run', {
    [RUN]: 'readings in a file',
    [DATA]: pointer,
    '.gitattributes': '*.csv filter=pointer\n',
  })
  // A filter as the storage program sets one up: the folder holds the data, git the pointer.
  const script = join(repository.top, '.git', 'pointer')
  repository.write('.git/pointer', pointer)
  repository.git('config', 'filter.pointer.clean', `cat >/dev/null; cat '${script}'`)
  repository.git('config', 'filter.pointer.smudge', 'cat >/dev/null; echo 1,2,3')
  repository.write(DATA, '1,2,3\n')
  const history = await known(repository.top)
  expect(history.uncommitted.size).toBe(0)
  expect(history.blobs.get(DATA)).toBe(repository.git('rev-parse', `HEAD:${DATA}`))
  expect(contentStateOf(history, DATA)).toBe('landed')
  repository.commit('other data', { [DATA]: '4,5,6\n', '.git/pointer': `${pointer}other\n` })
  expect([...(await known(repository.top)).texts.values()]).toEqual([pointer])
})

it('where a filter that git must have is missing, git can say nothing, and the program is named', async () => {
  const repository = makeRepository()
  repository.commit('add run', { [RUN]: 'readings', [DATA]: '1,2', '.gitattributes': '*.csv filter=none\n' })
  repository.git('config', 'filter.none.clean', 'no-such-program-here')
  repository.git('config', 'filter.none.required', 'true')
  repository.write(DATA, '1,3')
  const history = await readHistory(repository.top, { main: 'main' })
  expect(history).toMatchObject({ state: 'unknown', why: 'git-failed' })
  expect(history.state === 'unknown' && history.message).toContain('no-such-program-here')
})

it('blanks, letters of all kinds, quotes and line ends in paths', async () => {
  const paths = [
    'records/runs/2026-03/Prüfung Flügel links.md',
    'records/runs/2026-03/Ångström “x”.md',
    'records/runs/2026-03/試験.md',
    'records/items/"quoted".md',
    'records/items/two\nlines.md',
    'records/items/tab\tand \\ back.md',
    'records/items/-n *.md',
  ]
  const repository = makeRepository()
  repository.commit('begin', Object.fromEntries(paths.map((path, at) => [path, `text ${at}`])))
  expect((await historyOf(repository)).files).toEqual(
    Object.fromEntries(
      paths.map((path, at) => [
        path,
        {
          landed: [`begin: ${path} = text ${at}`],
          touched: [`begin: ${path} = text ${at}`],
          head: `text ${at}`,
        },
      ]),
    ),
  )
  for (const path of paths) repository.write(path, 'new')
  const { uncommitted, blobs } = await known(repository.top)
  expect([...uncommitted.keys()].sort()).toEqual(paths.toSorted())
  // printf new | git hash-object --stdin
  const blob = execFileSync('git', ['hash-object', '--stdin'], { input: 'new', encoding: 'utf8' }).trim()
  expect(new Set(blobs.values())).toEqual(new Set([blob]))
})

it('a repository with SHA-256 names', async () => {
  const repository = makeRepository(['--object-format=sha256'])
  repository.commit('begin', { [RUN]: 'read 4' })
  repository.commit('edit', { [RUN]: 'read 5' })
  const { files, line } = await known(repository.top)
  expect(line[0]).toMatch(/^[0-9a-f]{64}$/)
  expect(files.get(RUN)?.landed.map(({ blob }) => blob?.length)).toEqual([64, 64])
  expect((await historyOf(repository)).texts).toEqual(['read 4'])
})

it('a digest covers the id, the record and the data file, and nothing else', async () => {
  const repository = makeRepository()
  const start = { [RUN]: 'read 4', [DATA]: '1,2', 'records/runs/2026-03/notes.txt': 'n' }
  repository.commit('begin', start)
  const digest = async () => (await known(repository.top)).digests.get(RUN)
  const first = await digest()
  const blob = (path: string) => repository.git('rev-parse', `HEAD:${path}`)
  // printf 'id\0blob\0blob' | sha256sum, by another program than ours.
  const printed = `2026-03-02-leak\0${blob(RUN)}\0${blob(DATA)}`
  const sum = execFileSync('sha256sum', { input: printed, encoding: 'utf8' }).split(' ')[0]
  expect(first).toBe(`sha256:${sum}`)
  expect(first).toBe(digestOf('2026-03-02-leak', blob(RUN), blob(DATA)))
  repository.commit('notes', { 'records/runs/2026-03/notes.txt': 'other' })
  expect(await digest()).toBe(first)
  repository.move('records/runs/2026-03', 'records/runs/2026-04')
  const moved = (await known(repository.top)).digests
  expect(moved.get(RUN.replace('2026-03/', '2026-04/'))).toBe(first)
  repository.move('records/runs/2026-04', 'records/runs/2026-03')
  repository.write(DATA, '1,3')
  expect(await digest()).not.toBe(first)
  repository.write(DATA, null)
  expect(await digest()).not.toBe(first)
})
