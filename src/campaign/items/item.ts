/** What every kind of open item shares: a stable id, an owner, the gates that it holds. */
import type { Records } from '../../format/types.ts'
import type { HistoryFacts } from '../history/with-history.ts'
import type { CardState, ItemKind, OpenItem, Run } from '../types.ts'

export type ItemContext = {
  readonly records: Records
  readonly runs: readonly Run[]
  readonly cards: readonly CardState[]
  /** `YYYY-MM-DD` */
  readonly asOf: string
  /** Absent or null: history is not known. */
  readonly history?: HistoryFacts | null
  /** The moment that is looked at again, in ms; undefined: now. */
  readonly until?: number | undefined
}

export const gatesOfCard = (records: Records, card: string): readonly string[] =>
  Object.values(records.gates)
    .filter((gate) => gate.cards.includes(card))
    .map((gate) => gate.id)

/** The same facts always give the same id. */
export const itemId = (kind: ItemKind, ...about: readonly string[]): string =>
  [kind, ...about].join('.').replaceAll('/', '-').replaceAll('#', '.')

type Draft = {
  readonly kind: ItemKind
  readonly about: readonly string[]
  readonly title: string
  readonly closes: string
  readonly toReview?: readonly string[]
  readonly since: string
}

/** An item of a run: held gates and owner are those of its card. `key` tells two of one kind apart. */
export const runItem = (
  context: ItemContext,
  run: Run,
  draft: Draft,
  ...key: readonly string[]
): OpenItem => ({
  ...draft,
  id: itemId(draft.kind, run.id, ...key),
  gates: gatesOfCard(context.records, run.card.id),
  owner: run.card.owner,
  due: null,
  raisedByHand: false,
})

export const cardItem = (
  context: ItemContext,
  state: CardState,
  draft: Draft,
  ...key: readonly string[]
): OpenItem => ({
  ...draft,
  id: itemId(draft.kind, state.id, state.article, ...key),
  gates: gatesOfCard(context.records, state.id),
  owner: state.card.owner,
  due: null,
  raisedByHand: false,
})

/** Evidence counts only while its round is the newest: what was overtaken holds nothing. */
export const stillCounts = (run: Run): boolean => run.verdict !== null && run.overtakenBy === null
