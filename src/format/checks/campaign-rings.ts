/** The three orders that must not go round: gates, prerequisite cards, runs whose givens are results of runs. */
import type { Problem } from '../../problems/types.ts'
import type { Drafts } from '../drafts.ts'
import type { CardRecord, FieldPath, GivenText, RunRecord, SourceFile } from '../types.ts'
import type { World } from '../world.ts'
import { type Edge, ringProblems } from './rings.ts'

type Owned = { readonly path: string; readonly problem: Problem }

export function campaignRings(world: World & Pick<Drafts, 'gates'>): Owned[] {
  const gates = new Map(
    [...world.gates].map(([id, { base, fields }]) => [id, listEdges(fields.needs, base.source, 'needs')]),
  )
  const cards = new Map(
    [...world.cards].map(([id, { base, fields }]) => [id, listEdges(fields.after, base.source, 'after')]),
  )
  const path = (id: string) => world.known.get(id)?.path ?? ''
  const owned = ({ id, problem }: { id: string; problem: Problem }) => ({ path: path(id), problem })
  return [
    ...ringProblems(gates, (ring) => `gates need each other in a ring: ${ring}`, 'take one `needs` out').map(
      owned,
    ),
    ...ringProblems(
      cards,
      (ring) => `cards come after each other in a ring: ${ring}`,
      'take one `after` out',
    ).map(owned),
  ]
}

/** A run rests on the runs whose results are its givens, its card's or its article's. */
export function runRings(
  runs: Readonly<Record<string, RunRecord>>,
  cards: Readonly<Record<string, CardRecord>>,
): Owned[] {
  const graph = new Map<string, readonly Edge[]>()
  for (const [id, run] of Object.entries(runs)) {
    const card = Object.hasOwn(cards, run.card) ? cards[run.card] : undefined
    const article = run.article ?? Object.keys(card?.articles ?? {})[0] ?? ''
    const edges = [
      ...givenEdges(run.given, run.source, ['given']),
      ...(card ? givenEdges(without(card.given, run.given), card.source, ['given']) : []),
      ...(card
        ? givenEdges(without(card.articles[article] ?? {}, run.given), card.source, ['articles', article])
        : []),
    ]
    if (edges.length > 0) graph.set(id, edges)
  }
  const say = (ring: string) => `runs take their givens from each other in a ring: ${ring}`
  const rings = ringProblems(graph, say, 'give one of these values as a measured one')
  return rings.map(({ id, problem }) => ({ path: runs[id]?.source.path ?? '', problem }))
}

function listEdges(ids: readonly string[], source: SourceFile, field: string): Edge[] {
  return ids.map((to, index) => ({ to, at: () => source.locate([field, index]) }))
}

function givenEdges(given: Readonly<Record<string, GivenText>>, source: SourceFile, path: FieldPath): Edge[] {
  return Object.entries(given).flatMap(([name, written]) =>
    written.form === 'result' ? [{ to: written.from, at: () => source.locate([...path, name, 'from']) }] : [],
  )
}

const without = (given: Readonly<Record<string, GivenText>>, own: Readonly<Record<string, GivenText>>) =>
  Object.fromEntries(Object.entries(given).filter(([name]) => !Object.hasOwn(own, name)))
