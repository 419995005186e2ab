/**
 * An older state told out of the history of today, against the history that git itself tells when that commit is
 * checked out.
 */
import { execFileSync } from 'node:child_process'
import { expect, it } from 'vitest'
import { historyAt } from '../../src/history/at-commit.ts'
import { digestsOf } from '../../src/history/node/digest.ts'
import { parseTree } from '../../src/history/status.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import { known, makeRepository, type Repository } from './repository.ts'

const RUN = 'records/runs/2026-03/2026-03-02-0900-leak.md'
const MOVED = 'records/runs/2026-03/2026-03-02-0905-leak.md'
const CARD = 'shared/cards/leak.md'

const treeOf = (top: string, commit: string) =>
  parseTree(
    execFileSync('git', ['-C', top, 'ls-tree', '-r', '-z', commit, '--', 'records', 'shared'], {
      encoding: 'utf8',
    }),
  ).files

const sorted = <T>(map: ReadonlyMap<string, T>): (readonly [string, T])[] =>
  [...map].sort(([a], [b]) => (a < b ? -1 : 1))

/** All that a campaign asks of a history. Texts of today may be among the old ones as well: they are the same texts. */
const compared = (history: KnownHistory) => ({
  head: history.head,
  line: history.line,
  onMain: history.onMain,
  commits: [...history.commits.keys()].sort(),
  files: sorted(history.files),
  blobs: sorted(history.blobs),
  digests: sorted(history.digests),
  uncommitted: sorted(history.uncommitted),
})

const arranged = (): Repository => {
  const repository = makeRepository()
  const { commit, branch, go, merge, move } = repository
  commit('begin', { [CARD]: 'limit 6', 'shared/gates/a.md': 'cards a b' })
  branch('run')
  commit('run', { [RUN]: 'first' })
  commit('run again', { [RUN]: 'second' })
  go('main')
  merge('run', 'merge the run')
  commit('laxer', { [CARD]: 'limit 9' })
  branch('rename')
  move(RUN, MOVED)
  commit('rename')
  go('main')
  commit('other', { 'records/items/x.md': 'x' })
  merge('rename', 'merge the name')
  commit('taken away', { [MOVED]: null, 'records/items/x.md': null })
  commit('as before', { [CARD]: 'limit 6' })
  return repository
}

it('every commit of the main line, seen from the last one', async () => {
  const { top, git, write } = arranged()
  write('shared/gates/a.md', 'cards a')
  const now = await known(top)
  git('checkout', '-q', '--', '.')
  const texts = new Map([[CARD, 'limit 6']])
  expect(now.line.length).toBe(7)
  for (const commit of now.line) {
    const tree = treeOf(top, commit)
    const told = historyAt(now, { commit, tree, digests: digestsOf(tree) }, texts)
    git('checkout', '-q', commit)
    const expected = await known(top)
    expect(compared(told)).toEqual(compared(expected))
    for (const [blob, text] of expected.texts) expect(told.texts.get(blob)).toBe(text)
  }
})

it('a commit of a branch is not on the main line, and knows nothing of what landed elsewhere', async () => {
  const { top, git, commit, branch, go } = arranged()
  branch('work')
  const tip = commit('work', { 'records/items/y.md': 'y' })
  go('main')
  commit('meanwhile', { 'records/items/z.md': 'z' })
  git('checkout', '-q', 'work')
  commit('more work', { 'records/items/y.md': 'yy' })
  const now = await known(top)
  const tree = treeOf(top, tip)
  const told = historyAt(now, { commit: tip, tree, digests: digestsOf(tree) }, new Map())
  expect(told.onMain).toBe(false)
  expect(told.files.has('records/items/z.md')).toBe(false)
  expect(told.files.get('records/items/y.md')).toMatchObject({ landed: [], touched: [{ commit: tip }] })
})
