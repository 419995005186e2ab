/** What a rework would make worthless: the campaign as it is against the one after it. */
import { coveredParts, touches } from '../campaign/parts.ts'
import type { Campaign, CardState, CardStatus, GateState } from '../campaign/types.ts'
import { IMAGINED } from '../campaign/what-if.ts'

export type OvertakenCard = {
  readonly card: string
  readonly title: string
  readonly article: string
  readonly status: CardStatus
  readonly round: number
  /** Those of the round that would no longer count. */
  readonly runs: readonly string[]
  /** What of it the rework touches, as full paths. */
  readonly covers: readonly string[]
  readonly gates: readonly string[]
}

export type GateChange = {
  readonly gate: string
  readonly title: string
  readonly before: string
  readonly after: string
  readonly change: 'held again' | 'overtaken' | 'held by more'
}

export type Overtakes = {
  readonly part: string
  readonly asOf: string
  /** What passes now, conceded results among them; each may be stated `unaffected` in the record of the rework. */
  readonly passes: readonly OvertakenCard[]
  /** Fails and undetermined results that would no longer count. */
  readonly others: readonly OvertakenCard[]
  /** What covers the part and has no result that stands: nothing to overtake. */
  readonly without: readonly OvertakenCard[]
  /** Passes that would stand, until a card that becomes due is run again. `unaffected` does not help there. */
  readonly later: readonly (OvertakenCard & { readonly by: readonly string[] })[]
  readonly gates: readonly GateChange[]
}

const touched = ({ card, article }: CardState, part: string): readonly string[] =>
  coveredParts(card.covers, article).filter((own) => touches(part, own))

const described = (state: CardState, part: string, runs: readonly string[]): OvertakenCard => ({
  card: state.id,
  title: state.card.title,
  article: state.article,
  status: state.status,
  round: state.round,
  runs,
  covers: touched(state, part),
  gates: state.gates,
})

const passing = ({ status }: { readonly status: CardStatus }): boolean =>
  status === 'pass' || status === 'conceded'

export const gateWord = ({ state, overtaken }: Pick<GateState, 'state' | 'overtaken'>): string =>
  overtaken ? `${state}, overtaken` : state

const gateChanges = (before: Campaign, after: Campaign): GateChange[] =>
  after.gates.flatMap((gate): GateChange[] => {
    const was = before.gates.find((each) => each.id === gate.id)
    if (!was) return []
    const words = { gate: gate.id, title: gate.title, before: gateWord(was), after: gateWord(gate) }
    if (gate.overtaken && !was.overtaken) return [{ ...words, change: 'overtaken' as const }]
    if (gate.state === 'held' && was.state !== 'held') return [{ ...words, change: 'held again' as const }]
    const more = gate.heldBy.some((id) => !was.heldBy.includes(id))
    return more ? [{ ...words, change: 'held by more' as const }] : []
  })

/** `after` is the campaign after the imagined rework of `part`. */
export const overtakesOf = (part: string, before: Campaign, after: Campaign): Overtakes => {
  const lost = new Set(
    after.runs
      .filter((run) => run.overtakenBy?.id === IMAGINED)
      .map((run) => `${run.card.id} ${run.article}`),
  )
  const key = (state: CardState): string => `${state.id} ${state.article}`
  const runsOf = (state: CardState): string[] =>
    after.runs
      .filter(
        (run) =>
          run.card.id === state.id && run.article === state.article && run.overtakenBy?.id === IMAGINED,
      )
      .map((run) => run.id)
  const overtaken = before.cards.filter((state) => lost.has(key(state)))
  const standing = before.cards.filter((state) => !lost.has(key(state)))
  const all = overtaken.map((state) => described(state, part, runsOf(state)))
  return {
    part,
    asOf: before.asOf,
    passes: all.filter(passing),
    others: all.filter((each) => !passing(each)),
    without: standing
      .filter((state) => touched(state, part).length > 0)
      .map((state) => described(state, part, [])),
    later: standing.filter(passing).flatMap((state) => {
      const by = overtaken.filter(
        (other) => state.card.overtakenBy.includes(other.id) && touches(other.article, state.article),
      )
      const round = state.rounds.at(-1)
      return by.length === 0
        ? []
        : [{ ...described(state, part, round?.runs ?? []), by: [...new Set(by.map(({ id }) => id))] }]
    }),
    gates: gateChanges(before, after),
  }
}
