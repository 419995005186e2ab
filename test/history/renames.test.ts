/** Exact renames are followed, guesses are not: a new run must not inherit the history of a failing one, nor lose it. */
import { expect, it } from 'vitest'
import { goneRuns } from '../../src/history/state.ts'
import { historyOf, known, makeRepository, type Repository } from './repository.ts'

const OLD = 'records/runs/2026-03/old.md'
const NEW = 'records/runs/2026-03/new.md'
const THIRD = 'records/runs/2026-04/third.md'

const withRun = (text = 'failing run, read 9'): Repository => {
  const repository = makeRepository()
  repository.commit('begin', { 'shared/cards/leak.md': 'limit 5', [OLD]: text })
  return repository
}

const gone = async ({ top }: Repository) => goneRuns(await known(top))

it('a file that only changed its name keeps its history', async () => {
  const repository = withRun()
  repository.move(OLD, NEW)
  repository.commit('rename')
  const { files } = await historyOf(repository)
  expect(files[OLD]).toBeUndefined()
  expect(files[NEW]).toEqual({
    landed: [`begin: ${OLD} = failing run, read 9`, `rename: ${NEW} = failing run, read 9`],
    touched: [`begin: ${OLD} = failing run, read 9`, `rename: ${NEW} = failing run, read 9`],
    head: 'failing run, read 9',
  })
  expect(await gone(repository)).toEqual([])
})

it('a name that changed together with the text is one run gone and another come', async () => {
  const repository = withRun()
  repository.move(OLD, NEW)
  repository.commit('rename and edit', { [NEW]: 'failing run, read 4' })
  const { files } = await historyOf(repository)
  expect(files[OLD]?.landed.at(-1)).toBe(`rename and edit: ${OLD} = (gone)`)
  expect(files[NEW]?.landed).toEqual([`rename and edit: ${NEW} = failing run, read 4`])
  expect(await gone(repository)).toEqual([OLD])
})

it('a failing run that is deleted while one much like it is added stays gone', async () => {
  const readings = Array.from({ length: 200 }, (_, at) => `${at} ${(at * 37) % 101}`).join('\n')
  const repository = withRun(`${readings}\nlast 9`)
  repository.commit('try again', { [OLD]: null, [NEW]: `${readings}\nlast 4` })
  // Git itself would take these two for one file.
  expect(repository.git('show', '-M50%', '--format=', '--name-status')).toMatch(/^R09\d/)
  expect(await gone(repository)).toEqual([OLD])
  expect((await historyOf(repository)).files[NEW]?.touched).toHaveLength(1)
})

it('two alike: nobody can tell which is which, and none is followed', async () => {
  const repository = withRun()
  repository.commit('twin', { [THIRD]: 'failing run, read 9' })
  repository.move(OLD, NEW)
  repository.commit('rename one, delete the other', { [THIRD]: null })
  expect((await gone(repository)).sort()).toEqual([OLD, THIRD])
})

it('a rename from outside the records is none', async () => {
  const repository = makeRepository()
  repository.commit('begin', { 'drafts/a.md': 'text', 'shared/cards/leak.md': 'limit' })
  repository.move('drafts/a.md', NEW)
  repository.commit('file it')
  expect((await historyOf(repository)).files[NEW]?.landed).toEqual([`file it: ${NEW} = text`])
})

it('renamed and then edited on a branch that is merged: the edit is a change after landing', async () => {
  const repository = withRun()
  repository.branch('test')
  repository.move(OLD, NEW)
  repository.commit('rename')
  repository.commit('edit', { [NEW]: 'failing run, read 4' })
  repository.go('main')
  repository.commit('elsewhere', { 'shared/cards/leak.md': 'limit 6' })
  repository.merge('test', 'merge')
  const { files } = await historyOf(repository)
  expect(files[OLD]).toBeUndefined()
  expect(files[NEW]).toEqual({
    landed: [`begin: ${OLD} = failing run, read 9`, `merge: ${NEW} = failing run, read 4`],
    touched: [
      `begin: ${OLD} = failing run, read 9`,
      `rename: ${NEW} = failing run, read 9`,
      `edit: ${NEW} = failing run, read 4`,
    ],
    head: 'failing run, read 4',
  })
})

for (const how of ['merge', 'squash']) {
  it(`put aside, replaced and deleted on a branch: the ${how} changed the run after it had landed`, async () => {
    const repository = withRun()
    repository.branch('test')
    repository.move(OLD, NEW)
    repository.commit('put aside')
    repository.commit('replace', { [OLD]: 'passing run, read 4' })
    repository.commit('delete', { [NEW]: null })
    repository.go('main')
    if (how === 'merge') repository.merge('test', how)
    else {
      repository.git('merge', '-q', '--squash', 'test')
      repository.commit(how)
    }
    const { files } = await historyOf(repository)
    expect(files[OLD]?.landed).toEqual([
      `begin: ${OLD} = failing run, read 9`,
      `${how}: ${OLD} = passing run, read 4`,
    ])
    expect(Object.keys(files).sort()).toEqual([OLD, 'shared/cards/leak.md'])
  })
}

it('a rename onto the place of a run that was deleted does not cover it up', async () => {
  const repository = withRun()
  repository.commit('another', { [NEW]: 'passing run, read 4' })
  repository.commit('delete', { [OLD]: null })
  repository.move(NEW, OLD)
  repository.commit('cover up')
  const { files } = await historyOf(repository)
  expect(files[OLD]?.landed).toEqual([
    `begin: ${OLD} = failing run, read 9`,
    `delete: ${OLD} = (gone)`,
    `cover up: ${OLD} = passing run, read 4`,
  ])
  expect(await gone(repository)).toEqual([NEW])
})

it('two names exchanged through a third, in one branch: each name keeps what landed under it', async () => {
  const repository = withRun()
  repository.commit('another', { [NEW]: 'passing run, read 4' })
  repository.branch('test')
  for (const [from, to] of [
    [OLD, THIRD],
    [NEW, OLD],
    [THIRD, NEW],
  ] as const) {
    repository.move(from, to)
    repository.commit(`move ${from}`)
  }
  repository.go('main')
  repository.merge('test', 'merge')
  const { files } = await historyOf(repository)
  expect(files[OLD]?.landed).toEqual([
    `begin: ${OLD} = failing run, read 9`,
    `merge: ${OLD} = passing run, read 4`,
  ])
  expect(files[NEW]?.landed).toEqual([
    `another: ${NEW} = passing run, read 4`,
    `merge: ${NEW} = failing run, read 9`,
  ])
})

it('there and back again is the same file', async () => {
  const repository = withRun()
  repository.move(OLD, NEW)
  repository.commit('there')
  repository.move(NEW, OLD)
  repository.commit('back')
  const { files } = await historyOf(repository)
  expect(Object.keys(files).sort()).toEqual([OLD, 'shared/cards/leak.md'])
  expect(files[OLD]?.landed).toHaveLength(3)
})

it('a move that is not committed yet is followed too', async () => {
  const repository = withRun()
  repository.move(OLD, NEW)
  const { files, uncommitted } = await historyOf(repository)
  expect(uncommitted).toEqual({ [OLD]: 'removed', [NEW]: 'added' })
  expect(files[NEW]).toEqual({
    landed: [`begin: ${OLD} = failing run, read 9`],
    touched: [`begin: ${OLD} = failing run, read 9`],
    head: 'failing run, read 9',
  })
  expect(await gone(repository)).toEqual([])
})

it('a branch that renames while the main line edits under the old name', async () => {
  const repository = withRun()
  repository.branch('test')
  repository.move(OLD, NEW)
  repository.commit('rename')
  repository.go('main')
  repository.commit('edit', { [OLD]: 'failing run, read 8' })
  repository.go('test')
  const { files } = await historyOf(repository)
  expect(files[NEW]).toEqual({
    landed: [`begin: ${OLD} = failing run, read 9`, `edit: ${OLD} = failing run, read 8`],
    touched: [
      `begin: ${OLD} = failing run, read 9`,
      `edit: ${OLD} = failing run, read 8`,
      `rename: ${NEW} = failing run, read 9`,
    ],
    head: 'failing run, read 9',
  })
  expect(files[OLD]).toBeUndefined()
})
