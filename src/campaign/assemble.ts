/** Runs that are already computed → cards, items and gates, as the records stood at a moment. */
import type { GateRecord, ItemRecord, ReadinessRecord, Records, ReworkRecord } from '../format/types.ts'
import type { Method } from '../methods/method.ts'
import { cardRounds } from './card.ts'
import { type CardFormulas, type Functions, functionsFor } from './formulas.ts'
import { type GateContext, gateStates } from './gates.ts'
import type { HistoryFacts } from './history/with-history.ts'
import { cardItems } from './items/cards.ts'
import { conductItems } from './items/conduct.ts'
import { evidenceItems } from './items/evidence.ts'
import { followupItems } from './items/followups.ts'
import { handItems } from './items/hand.ts'
import { historyItems } from './items/history.ts'
import type { ItemContext } from './items/item.ts'
import { changesFor, splitRounds } from './rounds.ts'
import type { CardState, GateState, OpenItem, Run } from './types.ts'

export type Assembly = {
  readonly runs: readonly Run[]
  readonly cards: readonly CardState[]
  readonly items: readonly OpenItem[]
  readonly closedItems: readonly OpenItem[]
  readonly gates: readonly GateState[]
}

export type AssemblyContext = {
  readonly records: Records
  readonly runs: readonly Run[]
  readonly methods: Readonly<Record<string, Method>>
  readonly functions: Functions
  readonly formulas: ReadonlyMap<string, CardFormulas>
  readonly asOf: string
  /** Null: history is not known. */
  readonly history: HistoryFacts | null
  /** The moment that is looked at again, in ms; left out: now. */
  readonly until?: number
  /** Whether a gate was clear when a meeting decided; left out: worked out here, once a meeting. */
  readonly clearAt?: GateContext['clearAt']
}

type Placed = { readonly runs: readonly Run[]; readonly cards: readonly CardState[] }

/** Runs with their round and what overtook them; cards with their status. */
const place = (context: AssemblyContext): Placed => {
  const { records, runs } = context
  const reworks = Object.values(records.reworks)
  const placed = new Map<string, Run>()
  const cards: CardState[] = []
  for (const card of Object.values(records.cards)) {
    const method = context.methods[card.method]
    const formulas = context.formulas.get(card.id)
    if (!method || !formulas) continue
    for (const article of Object.keys(card.articles)) {
      const own = runs.filter((run) => run.card.id === card.id && run.article === article)
      const spans = splitRounds(own, changesFor(card, article, reworks, runs))
      const settledSpans = spans.map((span) => {
        const { endedBy } = span
        const overtakenBy = endedBy && { id: endedBy.id, what: endedBy.what, when: endedBy.when }
        return { ...span, runs: span.runs.map((run) => ({ ...run, round: span.number, overtakenBy })) }
      })
      for (const run of settledSpans.flatMap((span) => span.runs)) placed.set(run.id, run)
      const functions = functionsFor(method, context.functions)
      const items = Object.values(records.items)
      const rounds = cardRounds(
        { card, article, method, formulas, functions, items, people: records.people, asOf: context.asOf },
        settledSpans,
      )
      const gates = Object.values(records.gates)
        .filter((gate) => gate.cards.includes(card.id))
        .map((gate) => gate.id)
      cards.push({
        id: card.id,
        card,
        method,
        article,
        ...rounds,
        targets: {},
        decidable: [],
        expected: {},
        plan: null,
        gates,
        versions: context.history?.versions.get(card.id) ?? null,
      })
    }
  }
  return { runs: runs.map((run) => placed.get(run.id) ?? run), cards }
}

const upTo = <T extends { when: { epoch: number } }>(
  records: Readonly<Record<string, T>>,
  epoch: number,
): Record<string, T> =>
  Object.fromEntries(Object.entries(records).filter(([, record]) => record.when.epoch <= epoch))

/** The records as they stood when a meeting decided, without that meeting itself. */
const before = (records: Records, meeting: ReadinessRecord): Records => {
  const { epoch } = meeting.when
  const items: Record<string, ItemRecord> = {}
  for (const [id, item] of Object.entries(records.items)) {
    if (item.raised.when.epoch > epoch || meeting.conditions.includes(id)) continue
    const { closed, ...open } = item
    items[id] = closed && closed.when.epoch <= epoch ? item : open
  }
  const readiness = Object.fromEntries(
    Object.entries(upTo(records.readiness, epoch)).filter(
      ([id, record]) => id !== meeting.id && record.when.epoch < epoch,
    ),
  )
  const reworks: Record<string, ReworkRecord> = upTo(records.reworks, epoch)
  return { ...records, runs: upTo(records.runs, epoch), reworks, items, readiness }
}

/**
 * The facts as they stood at each meeting, assembled once a meeting. Meetings before that one ask here as well, so that
 * each is looked at once, however many came after it.
 */
const clearThen = (context: AssemblyContext): GateContext['clearAt'] => {
  const then = new Map<string, readonly GateState[]>()
  const clearAt = (gate: GateRecord, meeting: ReadinessRecord): boolean => {
    const known = then.get(meeting.id)
    const gates =
      known ??
      assemble({
        ...context,
        records: before(context.records, meeting),
        runs: context.runs.filter((run) => run.record.when.epoch <= meeting.when.epoch),
        asOf: meeting.when.date,
        until: meeting.when.epoch,
        clearAt,
      }).gates
    then.set(meeting.id, gates)
    const state = gates.find((each) => each.id === gate.id)
    return state !== undefined && (state.state === 'clear' || state.state === 'released')
  }
  return clearAt
}

export const assemble = (context: AssemblyContext): Assembly => {
  const { records, asOf, history, until } = context
  const { runs, cards } = place(context)
  const itemContext: ItemContext = { records, runs, cards, asOf, history, until }
  const byHand = handItems(records)
  const items = [
    ...byHand.open,
    ...cardItems(itemContext),
    ...conductItems(itemContext),
    ...evidenceItems(itemContext),
    ...followupItems(itemContext),
    ...historyItems(itemContext),
  ]
  const clearAt = context.clearAt ?? clearThen(context)
  const gates = gateStates({
    gates: records.gates,
    cards,
    items,
    readiness: Object.values(records.readiness),
    clearAt,
  })
  return { runs, cards, items, closedItems: byHand.closed, gates }
}
