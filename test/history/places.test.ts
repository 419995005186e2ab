/** Where history is read: every kind of clone, checkout and folder that a person or a service may have. */
import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, it } from 'vitest'
import { readHistory } from '../../src/history/node/read.ts'
import { contentStateOf, goneRuns, stateOf } from '../../src/history/state.ts'
import { historyOf, inWords, known, makeRepository, repositoryIn, temporaryFolder } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-leak.md'
const CARD = 'shared/cards/leak.md'

const clone = (from: string, ...args: string[]) => {
  const to = temporaryFolder()
  execFileSync('git', ['clone', '-q', ...args, `file://${from}`, to], { stdio: 'pipe' })
  return repositoryIn(to)
}

const landed = () => {
  const repository = makeRepository()
  repository.commit('begin', { [CARD]: 'limit 5' })
  repository.commit('add run', { [RUN]: 'read 4' })
  return repository
}

const why = async (root: string, main = 'main') => {
  const history = await readHistory(root, { main })
  return history.state === 'unknown' ? history.why : 'known'
}

const path = process.env.PATH
afterEach(() => {
  process.env.PATH = path
})

it('a tree without git, and a folder that is not there', async () => {
  const folder = temporaryFolder()
  mkdirSync(join(folder, 'records'))
  expect(await why(folder)).toBe('not-a-repository')
  expect(await why(join(folder, 'nowhere'))).toBe('not-a-repository')
})

it('no git on this machine', async () => {
  const { top } = landed()
  process.env.PATH = temporaryFolder()
  expect(await readHistory(top, { main: 'main' })).toEqual({
    state: 'unknown',
    why: 'no-git',
    message: 'git is not installed here',
    hint: 'install git, and run this again in a clone of the repository',
  })
})

it('a repository without a commit, with a bare one, and without the main line', async () => {
  expect(await why(makeRepository().top)).toBe('no-commit')
  const bare = temporaryFolder()
  execFileSync('git', ['init', '-q', '--bare', bare])
  expect(await why(bare)).toBe('bare')
  expect(await why(landed().top, 'trunk')).toBe('no-main')
})

it('inside the folder of git itself', async () => {
  expect(await why(join(landed().top, '.git'))).toBe('bare')
})

it('a shallow clone knows nothing, and says how to know', async () => {
  const history = await readHistory(clone(landed().top, '--depth', '1').top, { main: 'main' })
  expect(history).toMatchObject({ state: 'unknown', why: 'shallow' })
  expect(history.state === 'unknown' && history.hint).toContain('git fetch --unshallow')
  expect(stateOf(history, RUN)).toBe('unknown')
  expect(contentStateOf(history, RUN)).toBe('unknown')
})

it('after `git fetch --unshallow` it is as in a full clone', async () => {
  const origin = landed()
  const shallow = clone(origin.top, '--depth', '1')
  shallow.git('fetch', '-q', '--unshallow')
  expect(await historyOf(shallow)).toEqual(await historyOf(origin))
})

it('a clone that fetches contents when they are asked for gives the same', async () => {
  const origin = landed()
  origin.commit('relax', { [CARD]: 'limit 6' })
  origin.git('config', 'uploadpack.allowFilter', 'true')
  origin.git('config', 'uploadpack.allowAnySHA1InWant', 'true')
  const partial = clone(origin.top, '--filter=blob:none')
  expect((await known(partial.top)).texts.size).toBe(1)
  expect(await historyOf(partial)).toEqual(await historyOf(origin))
})

it('where the contents cannot be fetched, it is said and nothing is made up', async () => {
  const origin = landed()
  origin.commit('relax', { [CARD]: 'limit 6' })
  origin.git('config', 'uploadpack.allowFilter', 'true')
  origin.git('config', 'uploadpack.allowAnySHA1InWant', 'true')
  const partial = clone(origin.top, '--filter=blob:none')
  rmSync(origin.top, { recursive: true })
  const { texts, notes, files } = await known(partial.top)
  expect(texts.size).toBe(0)
  expect(files.get(CARD)?.landed).toHaveLength(2)
  expect(notes).toEqual([
    '1 earlier states could not be fetched (a clone without all contents, and no network)',
  ])
})

it("CI's merge ref: HEAD is a merge that is on no branch, and the run is a proposal", async () => {
  const origin = makeRepository()
  origin.commit('begin', { [CARD]: 'limit 5' })
  origin.branch('test')
  origin.commit('add run', { [RUN]: 'read 4' })
  origin.go('main')
  origin.commit('relax', { [CARD]: 'limit 6' })
  origin.git('checkout', '-q', '--detach', 'main')
  origin.merge('test', 'merge for the check')
  origin.git('update-ref', 'refs/pull/1/merge', 'HEAD')
  origin.go('main')
  const ci = makeRepository()
  ci.git('remote', 'add', 'origin', origin.top)
  ci.git(
    'fetch',
    '-q',
    'origin',
    '+refs/heads/*:refs/remotes/origin/*',
    '+refs/pull/1/merge:refs/remotes/pull/1/merge',
  )
  ci.git('checkout', '-q', '--force', 'refs/remotes/pull/1/merge')
  const history = await known(ci.top)
  expect(stateOf(history, RUN)).toBe('proposed')
  expect(stateOf(history, CARD)).toBe('landed')
  expect(inWords(history, ci)).toEqual({
    head: 'merge for the check',
    onMain: false,
    line: ['begin', 'relax'],
    begins: null,
    files: {
      [CARD]: {
        landed: [`begin: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`],
        touched: [`begin: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`],
        head: 'limit 6',
      },
      [RUN]: { landed: [], touched: [`add run: ${RUN} = read 4`], head: 'read 4' },
    },
    uncommitted: {},
    texts: ['limit 5'],
    notes: [],
  })
})

it('an old commit of the main line is shown as it was then', async () => {
  const repository = landed()
  repository.commit('relax', { [CARD]: 'limit 6' })
  repository.git('checkout', '-q', '--detach', 'HEAD~1')
  const { line, onMain, files, texts } = await historyOf(repository)
  expect({ line, onMain, texts }).toEqual({ line: ['begin', 'add run'], onMain: true, texts: [] })
  expect(files[CARD]?.landed).toEqual([`begin: ${CARD} = limit 5`])
})

it('the state of the forge counts, not an old local branch of that name', async () => {
  const origin = landed()
  const own = clone(origin.top)
  origin.commit('relax', { [CARD]: 'limit 6' })
  own.git('fetch', '-q')
  own.branch('test')
  expect((await historyOf(own)).line).toEqual(['begin', 'add run'])
  own.commit('propose', { [RUN]: 'read 5' })
  expect((await historyOf(own)).line).toEqual(['begin', 'add run', 'relax'])
})

it('a run that landed after this branch began is not gone from it', async () => {
  const repository = makeRepository()
  repository.commit('begin', { [CARD]: 'limit 5' })
  repository.branch('test')
  repository.commit('propose', { [CARD]: 'limit 6' })
  repository.go('main')
  repository.commit('add run', { [RUN]: 'read 4' })
  repository.go('test')
  const history = await known(repository.top)
  expect(goneRuns(history)).toEqual([])
  expect(stateOf(history, RUN)).toBe('landed')
  repository.git('merge', '-q', 'main')
  repository.commit('take out', { [RUN]: null })
  expect(goneRuns(await known(repository.top))).toEqual([RUN])
})

it('the records may lie in a folder of the repository', async () => {
  const repository = makeRepository()
  repository.commit('begin', { 'plane one/shared/cards/leak.md': 'limit 5', 'shared/cards/leak.md': 'other' })
  repository.commit('add run', { [`plane one/${RUN}`]: 'read 4' })
  repository.write(`plane one/${RUN}`, 'read 5')
  repository.write('plane one/shared/people.yaml', 'ada')
  const history = await known(join(repository.top, 'plane one'))
  expect(inWords(history, repository)).toEqual({
    head: 'add run',
    onMain: true,
    line: ['begin', 'add run'],
    begins: null,
    files: {
      [CARD]: {
        landed: [`begin: ${CARD} = limit 5`],
        touched: [`begin: ${CARD} = limit 5`],
        head: 'limit 5',
      },
      [RUN]: { landed: [`add run: ${RUN} = read 4`], touched: [`add run: ${RUN} = read 4`], head: 'read 4' },
    },
    uncommitted: { [RUN]: 'changed', 'shared/people.yaml': 'added' },
    texts: ['read 4'],
    notes: [],
  })
  expect(history.blobs.get(RUN)).toBe(repository.git('hash-object', join(repository.top, 'plane one', RUN)))
})

it('a second working folder of one repository', async () => {
  const repository = landed()
  const second = join(temporaryFolder(), 'second')
  repository.git('worktree', 'add', '-q', '-b', 'test', second)
  expect(await historyOf(repositoryIn(second))).toEqual(await historyOf(repository))
})

it('a hook of another repository does not lead astray', async () => {
  const { top } = landed()
  const other = makeRepository()
  other.commit('something else', { 'a.txt': 'a' })
  process.env.GIT_DIR = join(other.top, '.git')
  try {
    expect((await known(top)).files.has(RUN)).toBe(true)
  } finally {
    delete process.env.GIT_DIR
  }
})

it("the user's taste changes nothing", async () => {
  const repository = landed()
  repository.commit('relax', { [CARD]: 'limit 6' })
  const plain = await historyOf(repository)
  const taste = {
    'color.ui': 'always',
    'log.decorate': 'full',
    'log.showSignature': 'true',
    'log.showRoot': 'false',
    'log.diffMerges': 'combined',
    'log.abbrevCommit': 'true',
    'diff.renames': 'copies',
    'diff.relative': 'true',
    'status.showUntrackedFiles': 'no',
    'status.relativePaths': 'true',
    'format.pretty': 'oneline',
    'alias.log': 'status',
    'core.quotePath': 'true',
    'notes.displayRef': 'refs/notes/*',
  }
  for (const [name, value] of Object.entries(taste)) repository.git('config', name, value)
  repository.git('notes', 'add', '-m', 'Reviewed-content: none', 'HEAD')
  expect(await historyOf(repository)).toEqual(plain)
})

it('what was added, changed, removed or staged and not committed is told by content', async () => {
  const repository = landed()
  repository.commit('more', {
    'shared/cards/a.md': 'a',
    'shared/cards/b.md': 'b',
    '.gitignore': '*.draft.md',
  })
  repository.write('shared/cards/a.md', 'other')
  repository.git('add', '-A')
  repository.write('shared/cards/a.md', 'a')
  repository.write('shared/cards/b.md', null)
  repository.write('shared/cards/c.md', 'c')
  repository.write('shared/cards/d.draft.md', 'd')
  repository.git('rm', '-q', '--cached', CARD)
  repository.write(RUN, 'read 5')
  expect((await historyOf(repository)).uncommitted).toEqual({
    'shared/cards/b.md': 'removed',
    'shared/cards/c.md': 'added',
    'shared/cards/d.draft.md': 'added',
    [RUN]: 'changed',
  })
})

it('files whose changes git was told to overlook are looked at all the same', async () => {
  const repository = landed()
  repository.git('update-index', '--assume-unchanged', RUN)
  repository.write(RUN, 'read 5')
  expect(repository.git('status', '--porcelain')).toBe('')
  expect((await historyOf(repository)).uncommitted).toEqual({ [RUN]: 'changed' })
})

it('a sparse checkout has lost nothing', async () => {
  const repository = landed()
  repository.git('sparse-checkout', 'set', '--no-cone', '/shared/')
  const history = await known(repository.top)
  expect(goneRuns(history)).toEqual([])
  expect(history.uncommitted.size).toBe(0)
  expect(history.notes).toEqual([`files that git leaves out of this folder (sparse checkout): ${RUN}`])
})

it('a link is no record: what it leads to has no history', async () => {
  const repository = landed()
  writeFileSync(join(repository.top, 'elsewhere.md'), 'read 3')
  repository.write(RUN, null)
  symlinkSync(join(repository.top, 'elsewhere.md'), join(repository.top, RUN))
  expect((await historyOf(repository)).uncommitted).toEqual({ [RUN]: 'changed' })
  repository.commit('link')
  const history = await known(repository.top)
  expect(contentStateOf(history, RUN)).toBe('uncommitted')
  expect(history.notes[0]).toContain(RUN)
})

it('a damaged repository is said, not thrown', async () => {
  const { top } = landed()
  const damaged = temporaryFolder()
  cpSync(top, damaged, { recursive: true })
  rmSync(join(damaged, '.git/objects'), { recursive: true })
  mkdirSync(join(damaged, '.git/objects'))
  expect(['git-failed', 'no-commit']).toContain(await why(damaged))
})
