/** What the campaign asks: what was in force when, and where its history begins. */
import { expect, it } from 'vitest'
import {
  contentStateOf,
  firstVersion,
  landedOf,
  recordedOf,
  resolveRevision,
  revisionAt,
  stateOf,
  textOfBlob,
  treeAt,
  versionAt,
} from '../../src/history/state.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import { historyOf, known, makeRepository } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-leak.md'
const CARD = 'shared/cards/leak.md'
const SETTINGS = 'shared/campaign.yaml'

const T = Date.UTC(2026, 2, 2, 8) / 1000
const HOUR = 3600

const limits = () => {
  const repository = makeRepository()
  repository.commit('begin', { 'shared/people.yaml': 'ada' }, { at: T })
  repository.commit('limit 5', { [CARD]: 'limit 5' }, { at: T + HOUR })
  repository.commit('limit 6', { [CARD]: 'limit 6' }, { at: T + 2 * HOUR })
  repository.commit('take away', { [CARD]: null }, { at: T + 3 * HOUR })
  repository.commit('limit 7', { [CARD]: 'limit 7' }, { at: T + 4 * HOUR })
  return repository
}

const cardAt = (history: KnownHistory, seconds: number) => {
  const version = versionAt(history, CARD, seconds * 1000)
  return version?.blob ? textOfBlob(history, version.blob, () => 'today') : null
}

it('the state of a file at a time: to the second, and none where it was not there', async () => {
  const history = await known(limits().top)
  const at = [-1, 0, 3599, 3600, 2 * HOUR - 1, 2 * HOUR, 3 * HOUR, 4 * HOUR - 1, 4 * HOUR, 1e9]
  expect(at.map((after) => cardAt(history, T + after))).toEqual([
    null,
    null,
    null,
    'limit 5',
    'limit 5',
    'limit 6',
    null,
    null,
    'today',
    'today',
  ])
  expect(revisionAt(history, T * 1000 - 1)).toBeNull()
})

it('all of a folder as it was, and nothing of other folders', async () => {
  const repository = limits()
  repository.commit('add run', { [RUN]: 'read 4' })
  const history = await known(repository.top)
  const names = history.line.map((revision) => [...treeAt(history, revision).keys()].sort())
  expect(names).toEqual([
    ['shared/people.yaml'],
    [CARD, 'shared/people.yaml'],
    [CARD, 'shared/people.yaml'],
    ['shared/people.yaml'],
    [CARD, 'shared/people.yaml'],
    [CARD, 'shared/people.yaml'],
  ])
})

it('a date set back brings a limit into force no earlier than the commit below it', async () => {
  const repository = makeRepository()
  repository.commit('limit 5', { [CARD]: 'limit 5' }, { at: T })
  repository.commit('other', { 'shared/people.yaml': 'ada' }, { at: T + 50 * HOUR })
  repository.commit('limit 6', { [CARD]: 'limit 6' }, { at: T + HOUR })
  const history = await known(repository.top)
  expect(cardAt(history, T + 2 * HOUR)).toBe('limit 5')
  expect(cardAt(history, T + 50 * HOUR)).toBe('today')
  expect(history.notes[0]).toContain((history.line[2] ?? '').slice(0, 10))
})

it('a revision by the beginning of its hash, on the main line only', async () => {
  const repository = limits()
  repository.branch('test')
  const side = repository.commit('side', { [CARD]: 'limit 8' })
  const history = await known(repository.top)
  const [first = ''] = history.line
  expect(resolveRevision(history, first.slice(0, 7))).toBe(first)
  expect(resolveRevision(history, first.toUpperCase())).toBe(first)
  expect(resolveRevision(history, first.slice(0, 6))).toBeNull()
  expect(resolveRevision(history, `${first}0`)).toBeNull()
  expect(resolveRevision(history, 'main')).toBeNull()
  expect(resolveRevision(history, side)).toBeNull()
})

it('recorded by its first commit, landed by the merge, edited since', async () => {
  const repository = makeRepository()
  repository.commit('begin', { [CARD]: 'limit 5' }, { at: T })
  repository.branch('test')
  repository.commit('add run', { [RUN]: 'read 4' }, { by: 'Bea', at: T + HOUR })
  const branch = await known(repository.top)
  expect([stateOf(branch, RUN), contentStateOf(branch, RUN)]).toEqual(['proposed', 'proposed'])
  expect(landedOf(branch, RUN)).toBeNull()
  repository.go('main')
  repository.merge('test', 'merge')
  const history = await known(repository.top)
  expect(recordedOf(history, RUN)).toMatchObject({
    subject: 'add run',
    author: { name: 'Bea', email: 'bea@example.org' },
    // git log --format=%aI, by the dates that the test set
    authored: '2026-03-02T10:00:00+01:00',
    epoch: (T + HOUR) * 1000,
  })
  expect(landedOf(history, RUN)?.subject).toBe('merge')
  expect([stateOf(history, RUN), contentStateOf(history, RUN)]).toEqual(['landed', 'landed'])
  repository.write(RUN, 'read 5')
  const edited = await known(repository.top)
  expect([stateOf(edited, RUN), contentStateOf(edited, RUN)]).toEqual(['landed', 'uncommitted'])
  repository.branch('again')
  repository.commit('edit')
  const proposed = await known(repository.top)
  expect([stateOf(proposed, RUN), contentStateOf(proposed, RUN)]).toEqual(['landed', 'proposed'])
  expect(stateOf(proposed, 'records/runs/2026-03/nothing.md')).toBe('uncommitted')
})

const drafts = () => {
  const repository = makeRepository()
  repository.commit('draft', { [SETTINGS]: 'title: T\n', [CARD]: 'limit 5', [RUN]: 'read 9' })
  repository.commit('gone before', { 'shared/cards/old.md': 'old' })
  repository.commit('still draft', { [RUN]: 'read 4', 'shared/cards/old.md': null })
  return repository
}

it('history begins where `begins` came; what lay before is no change', async () => {
  const repository = drafts()
  repository.commit('begin now', { [SETTINGS]: 'title: T\nbegins: 2026-03-10\n' })
  repository.commit('relax', { [CARD]: 'limit 6' })
  const { begins, line, files } = await historyOf(repository)
  expect({ begins, line }).toEqual({ begins: 'begin now', line: ['begin now', 'relax'] })
  expect(Object.keys(files).sort()).toEqual([RUN, SETTINGS, CARD])
  expect(files[RUN]).toEqual({
    landed: [`begin now: ${RUN} = read 4`],
    touched: [`draft: ${RUN} = read 9`, `still draft: ${RUN} = read 4`],
    head: 'read 4',
  })
  expect(files[CARD]?.landed).toEqual([`begin now: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`])
  const history = await known(repository.top)
  expect(firstVersion(history, RUN)?.commit).toBe(history.line[0])
  expect(versionAt(history, RUN, T * 1000)).toBeNull()
})

it('a new value begins anew, other lines do not, and without the line all counts', async () => {
  const repository = drafts()
  repository.commit('begin now', { [SETTINGS]: 'title: T\nbegins: first\n' })
  repository.commit('other title', { [SETTINGS]: 'title: U\nbegins:   first\n' })
  expect((await historyOf(repository)).begins).toBe('begin now')
  repository.commit('begin again', { [SETTINGS]: 'title: U\nbegins: second\n' })
  repository.commit('relax', { [CARD]: 'limit 6' })
  expect((await historyOf(repository)).begins).toBe('begin again')
  repository.commit('take it out', { [SETTINGS]: 'title: U\n' })
  const { begins, line, files } = await historyOf(repository)
  expect(begins).toBeNull()
  expect(line[0]).toBe('draft')
  expect(files[RUN]?.landed).toEqual([`draft: ${RUN} = read 9`, `still draft: ${RUN} = read 4`])
})

it('a line that is taken out and put back, or broken and mended, wipes nothing', async () => {
  const repository = drafts()
  const first = { [SETTINGS]: 'title: T\nbegins: first\n' }
  repository.commit('begin now', first)
  repository.commit('relax', { [CARD]: 'limit 6' })
  for (const [subject, text] of [
    ['take it out', 'title: T\n'],
    ['break it', 'title: T\nbegins: first: second\n'],
    ['begin elsewhere', 'title: T\nbegins: second\n'],
  ] as const) {
    repository.commit(subject, { [SETTINGS]: text })
    repository.commit(`undo: ${subject}`, first)
    expect((await historyOf(repository)).begins).toBe('begin now')
  }
})

it('a beginning that is only proposed changes nothing yet', async () => {
  const repository = drafts()
  repository.branch('test')
  repository.commit('begin now', { [SETTINGS]: 'title: T\nbegins: 2026-03-10\n' })
  expect((await historyOf(repository)).begins).toBeNull()
})
