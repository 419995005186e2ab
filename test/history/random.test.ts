/**
 * Random histories with branches, merges, renames, copies and deletions against git's own trees: whatever is told of
 * single files must add up to the whole tree of every commit of the main line.
 */
import { execFileSync } from 'node:child_process'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { treeAt } from '../../src/history/state.ts'
import type { KnownHistory } from '../../src/history/types.ts'
import { importSteps, type Step } from './generate.ts'
import { known } from './repository.ts'

const NUMBER = Number(process.env.RANDOM_HISTORIES ?? 20)

const PATHS = ['shared/cards/a.md', 'shared/cards/b.md', 'shared/gates/c.md', 'shared/d.md']

const path = fc.constantFrom(...PATHS)
const edit = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant('write'), path, text: fc.integer({ min: 0, max: 4 }) }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('move'), path, to: path }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('copy'), path, to: path }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('delete'), path }) },
)
type Edit = { readonly do: string; readonly path: string; readonly to?: string; readonly text?: number }

const step = fc.record({
  edits: fc.array(edit, { maxLength: 3 }),
  /** How far back its parents are. */
  back: fc.integer({ min: 1, max: 3 }),
  merge: fc.option(fc.integer({ min: 1, max: 4 }), { freq: 2 }),
})
type Drawn = { readonly edits: readonly Edit[]; readonly back: number; readonly merge: number | null }

type Tree = ReadonlyMap<string, string>

const edited = (tree: Tree, edits: readonly Edit[]): Tree => {
  const next = new Map(tree)
  for (const { do: what, path, to, text } of edits) {
    const there = next.get(path)
    if (what === 'write') next.set(path, `text ${text}`)
    else if (what === 'delete') next.delete(path)
    else if (there !== undefined && to !== undefined && to !== path) {
      next.set(to, there)
      if (what === 'move') next.delete(path)
    }
  }
  return next
}

const difference = (from: Tree, to: Tree): Record<string, string | null> =>
  Object.fromEntries(
    PATHS.filter((path) => from.get(path) !== to.get(path)).map((path) => [path, to.get(path) ?? null]),
  )

/** Trees are kept by hand, so that a merge can take files from either side. */
const stepsOf = (drawn: readonly Drawn[]): Step[] => {
  const trees: Tree[] = []
  return drawn.map(({ edits, back, merge }, at) => {
    const first = at - back
    const second = merge === null ? -1 : at - merge
    const parents = [first, second].filter(
      (parent, place) => parent >= 0 && (place === 0 || parent !== first),
    )
    const [one, other] = parents
    const base: Tree = one === undefined ? new Map() : (trees[one] ?? new Map())
    const theirs = other === undefined ? undefined : trees[other]
    const taken = theirs
      ? new Map(
          PATHS.flatMap((path, n) => {
            const text = (n % 2 === 0 ? theirs : base).get(path)
            return text === undefined ? [] : [[path, text] as const]
          }),
        )
      : base
    const tree = edited(taken, edits)
    trees.push(tree)
    return { parents, files: difference(base, tree) }
  })
}

/** As git itself lists them. */
const treeByGit = (root: string, commit: string): Map<string, string> => {
  const listed = execFileSync('git', ['-C', root, 'ls-tree', '-r', commit, 'shared/'], { encoding: 'utf8' })
  return new Map(
    listed.split('\n').flatMap((line) => {
      const [, , blob, path] = line.split(/[ \t]/)
      return blob !== undefined && path !== undefined ? [[path, blob] as const] : []
    }),
  )
}

const sorted = (tree: ReadonlyMap<string, string>) => [...tree].sort(([a], [b]) => (a < b ? -1 : 1))

const addsUp = (root: string, history: KnownHistory): void => {
  for (const commit of history.line) {
    expect(sorted(treeAt(history, commit))).toEqual(sorted(treeByGit(root, commit)))
  }
  const head = [...history.files].flatMap(([path, { head }]) =>
    head === null ? [] : [[path, head] as const],
  )
  expect(sorted(new Map(head))).toEqual(sorted(treeByGit(root, 'HEAD')))
  for (const [path, file] of history.files) {
    expect(file.path).toBe(path)
    const order = file.landed.map(({ commit }) => history.line.indexOf(commit))
    expect(order).toEqual(order.toSorted((a, b) => a - b))
  }
}

/** Nothing that ever stood on the main line may be without a file that tells it. */
const nothingLost = (root: string, { line, files }: KnownHistory): void => {
  const told = new Set(
    [...files.values()].flatMap(({ landed }) => landed.map(({ path, blob }) => `${path} ${blob}`)),
  )
  for (const commit of line) {
    for (const [path, blob] of treeByGit(root, commit)) expect(told).toContain(`${path} ${blob}`)
  }
}

it(
  'all states of all files add up to the trees that git has',
  async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(step, { minLength: 2, maxLength: 14 }),
        fc.integer({ min: 0, max: 3 }),
        async (drawn, behind) => {
          const last = drawn.length - 1
          const root = importSteps(stepsOf(drawn), { main: Math.max(0, last - behind), test: last })
          execFileSync('git', ['-C', root, 'checkout', '-q', '--force', 'test'])
          const history = await known(root)
          addsUp(root, history)
          nothingLost(root, history)
        },
      ),
      { numRuns: NUMBER, seed: 20260302 },
    )
  },
  60_000 + 4_000 * NUMBER,
)
