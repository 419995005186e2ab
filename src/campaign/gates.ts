/** Gates: what must be settled before the next step, and whether it is. */
import type { GateRecord, ReadinessRecord } from '../format/types.ts'
import type { CardState, GateState, OpenItem } from './types.ts'

const settled = (status: CardState['status']): boolean => status === 'pass' || status === 'conceded'

/** What the state of the facts was when the meeting decided is asked by `clearAt`. */
export type GateContext = {
  readonly gates: Readonly<Record<string, GateRecord>>
  readonly cards: readonly CardState[]
  readonly items: readonly OpenItem[]
  readonly readiness: readonly ReadinessRecord[]
  /** Was the gate clear at that moment, by the records of then? */
  readonly clearAt: (gate: GateRecord, record: ReadinessRecord) => boolean
}

const conditionsMet = (record: ReadinessRecord, items: readonly OpenItem[]): boolean =>
  record.decision === 'go' || record.conditions.every((id) => !items.some((item) => item.id === id))

const releasing = (context: GateContext, gate: GateRecord): ReadinessRecord | null => {
  const records = context.readiness
    .filter((record) => record.gate === gate.id)
    .sort((a, b) => a.when.epoch - b.when.epoch)
  const last = records.at(-1)
  if (!last || last.decision === 'no-go' || !conditionsMet(last, context.items)) return null
  return context.clearAt(gate, last) ? last : null
}

const overtakes = ({ status }: CardState): boolean =>
  status === 'due-again' || status === 'fail' || status === 'undetermined'

/** That the article or its evidence is not what the meeting took it for. It was clear then, so these came later. */
const OVERTAKING: readonly OpenItem['kind'][] = [
  'discrepancy',
  'changed',
  'run-gone',
  'voided',
  'instrument-found-wrong',
  'basis-differs',
]

const overtakesRelease = (item: OpenItem): boolean => OVERTAKING.includes(item.kind)

const met = (gate: GateState | undefined): boolean =>
  gate !== undefined && (gate.state === 'clear' || (gate.state === 'released' && !gate.overtaken))

const cardWords = (state: CardState): string => {
  const on = `${state.card.title} on ${state.article}`
  if (state.status === 'due-again') return `${on} is due again after ${state.dueBecause?.what ?? 'a change'}`
  if (state.status === 'not-run') return `${on} has not been run`
  if (state.status === 'fail') return `${on} fails in round ${state.round}`
  return `${on} is undetermined in round ${state.round}`
}

/** All gates, those that are needed by others first. A ring of gates is a problem of the files and is cut here. */
export const gateStates = (context: GateContext): GateState[] => {
  const done = new Map<string, GateState>()
  const visit = (id: string, trail: readonly string[]): GateState | undefined => {
    const gate = context.gates[id]
    const known = done.get(id)
    if (known || !gate || trail.includes(id)) return known
    const needed = gate.needs.map((need) => ({ need, state: visit(need, [...trail, id]) }))
    const state = gateState(context, gate, needed)
    done.set(id, state)
    return state
  }
  for (const id of Object.keys(context.gates)) visit(id, [])
  return [...done.values()].sort((a, b) => a.order - b.order || (a.id < b.id ? -1 : 1))
}

const gateState = (
  context: GateContext,
  gate: GateRecord,
  needed: readonly { need: string; state: GateState | undefined }[],
): GateState => {
  const cards = context.cards.filter((state) => gate.cards.includes(state.id))
  const openCards = cards.filter((state) => !settled(state.status))
  const items = context.items.filter((item) => item.gates.includes(gate.id))
  const unmet = needed.filter(({ state }) => !met(state))
  const clear = openCards.length === 0 && items.length === 0 && unmet.length === 0 && cards.length > 0
  const released = releasing(context, gate)
  const handItems = items.filter((item) => !openCards.some((state) => coveredBy(item, state)))
  const words = [
    ...unmet.map(({ need, state }) => `waits for the gate ${state?.title ?? need}`),
    ...openCards.map(cardWords),
    ...handItems.map((item) => item.title),
    ...(cards.length === 0 ? ['no card is named for it yet'] : []),
  ]
  return {
    id: gate.id,
    title: gate.title,
    order: gate.order,
    state: released ? 'released' : clear ? 'clear' : 'held',
    overtaken: released !== null && (openCards.some(overtakes) || items.some(overtakesRelease)),
    heldBy: [...unmet.map(({ need }) => need), ...items.map((item) => item.id)],
    words,
    released,
    needs: gate.needs,
    cards: cards.map((state) => ({ card: state.id, article: state.article, status: state.status })),
  }
}

/** The sentence of the card already says what this item says. */
const coveredBy = (item: OpenItem, state: CardState): boolean =>
  !item.raisedByHand &&
  item.about.includes(state.id) &&
  ['failed-criterion', 'undetermined-criterion', 'not-run', 'too-few-runs', 'due-again'].includes(item.kind)
