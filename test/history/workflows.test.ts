/**
 * How a run comes to the main line: merge, squash, rebase. What git says of itself (its objects and refs, read by git)
 * is the reference; what is expected follows from the meaning of the words in the design of the records.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { historyOf, makeRepository, type Repository } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-leak.md'
const CARD = 'shared/cards/leak.md'

/** A card on the main line; a run that is added and then changed on one branch, while the card changes on the main line. */
const twoLines = (): Repository => {
  const repository = makeRepository()
  repository.commit('begin', { [CARD]: 'limit 5', 'README.md': 'not a record' })
  repository.branch('test')
  repository.commit('add run', { [RUN]: 'read 4' }, { by: 'Bea' })
  repository.commit('mend run', { [RUN]: 'read 4.1' }, { by: 'Bea' })
  repository.go('main')
  repository.commit('relax', { [CARD]: 'limit 6' })
  return repository
}

const card = {
  landed: [`begin: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`],
  touched: [`begin: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`],
  head: 'limit 6',
}

const whole = {
  onMain: true,
  begins: null,
  uncommitted: {},
  texts: ['limit 5'],
  notes: [],
}

it('a merge lands what the branch came to; its steps stay told', async () => {
  const repository = twoLines()
  repository.merge('test', 'merge')
  expect(await historyOf(repository)).toEqual({
    ...whole,
    head: 'merge',
    line: ['begin', 'relax', 'merge'],
    files: {
      [CARD]: card,
      [RUN]: {
        landed: [`merge: ${RUN} = read 4.1`],
        touched: [`add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
        head: 'read 4.1',
      },
    },
  })
})

it('a squash lands the same in one commit', async () => {
  const repository = twoLines()
  repository.git('merge', '-q', '--squash', 'test')
  repository.commit('squash')
  expect(await historyOf(repository)).toEqual({
    ...whole,
    head: 'squash',
    line: ['begin', 'relax', 'squash'],
    files: {
      [CARD]: card,
      [RUN]: {
        landed: [`squash: ${RUN} = read 4.1`],
        touched: [`squash: ${RUN} = read 4.1`],
        head: 'read 4.1',
      },
    },
  })
})

it('on the branch that was squashed, its own commits come after what the main line is made of', async () => {
  const repository = twoLines()
  repository.git('merge', '-q', '--squash', 'test')
  repository.commit('squash')
  repository.go('test')
  const { files, onMain, texts } = await historyOf(repository)
  expect(onMain).toBe(false)
  expect(texts).toEqual(['limit 6'])
  expect(files[RUN]).toEqual({
    landed: [`squash: ${RUN} = read 4.1`],
    touched: [`squash: ${RUN} = read 4.1`, `add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
    head: 'read 4.1',
  })
})

const rebased = (): { repository: Repository; hashes: string[] } => {
  const repository = twoLines()
  repository.go('test')
  repository.git('rebase', '-q', 'main')
  repository.go('main')
  repository.git('merge', '-q', '--ff-only', 'test')
  return { repository, hashes: repository.git('rev-list', 'main', '-2').split('\n') }
}

it('a rebase lands each commit by itself as far as git knows', async () => {
  const { repository } = rebased()
  const { files, line } = await historyOf(repository)
  expect(line).toEqual(['begin', 'relax', 'add run', 'mend run'])
  expect(files[RUN]).toEqual({
    landed: [`add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
    touched: [`add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
    head: 'read 4.1',
  })
})

it('where the forge says that they are one pull request, they land together', async () => {
  const { repository, hashes } = rebased()
  const pulls = [{ number: 7, commits: hashes, approvals: [], files: {} }]
  writeFileSync(join(repository.top, '.reviews.json'), JSON.stringify({ schema: 1, pulls }))
  const { files, line, texts } = await historyOf(repository)
  expect(line).toEqual(['begin', 'relax', 'add run', 'mend run'])
  expect(texts).toEqual(['limit 5'])
  expect(files[RUN]).toEqual({
    landed: [`mend run: ${RUN} = read 4.1`],
    touched: [`add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
    head: 'read 4.1',
  })
})

it('a branch that was not merged is a proposal, and what its base did meanwhile is known', async () => {
  const repository = twoLines()
  repository.go('test')
  expect(await historyOf(repository)).toEqual({
    ...whole,
    head: 'mend run',
    onMain: false,
    line: ['begin', 'relax'],
    texts: ['limit 6'],
    files: {
      [CARD]: { ...card, head: 'limit 5' },
      [RUN]: {
        landed: [],
        touched: [`add run: ${RUN} = read 4`, `mend run: ${RUN} = read 4.1`],
        head: 'read 4.1',
      },
    },
  })
})

it('a merge that makes a state of its own has touched the file', async () => {
  const repository = makeRepository()
  repository.commit('begin', { [CARD]: 'limit 5' })
  repository.branch('test')
  repository.commit('tighten', { [CARD]: 'limit 4' })
  repository.go('main')
  repository.commit('relax', { [CARD]: 'limit 6' })
  repository.git('merge', '-q', '--no-commit', '--no-ff', '-s', 'ours', 'test')
  repository.commit('settle', { [CARD]: 'limit 9' })
  const { files } = await historyOf(repository)
  expect(files[CARD]).toEqual({
    landed: [`begin: ${CARD} = limit 5`, `relax: ${CARD} = limit 6`, `settle: ${CARD} = limit 9`],
    touched: [
      `begin: ${CARD} = limit 5`,
      `relax: ${CARD} = limit 6`,
      `tighten: ${CARD} = limit 4`,
      `settle: ${CARD} = limit 9`,
    ],
    head: 'limit 9',
  })
})

it('a history that was forced anew is the one that counts; the old one is not told', async () => {
  const repository = twoLines()
  repository.git('reset', '-q', '--hard', 'HEAD~1')
  repository.commit('other card', { [CARD]: 'limit 7' })
  const { files, line } = await historyOf(repository)
  expect(line).toEqual(['begin', 'other card'])
  expect(files[CARD]?.landed).toEqual([`begin: ${CARD} = limit 5`, `other card: ${CARD} = limit 7`])
})
