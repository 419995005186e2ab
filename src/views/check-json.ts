/** The JSON of `check`, field by field as the format fixes it. Numbers are in the unit that stands beside them. */
import type { Campaign, CardState, OpenItem, Provenance, Round, Run } from '../campaign/types.ts'
import { measureUnit } from '../campaign/units.ts'
import type { Judgement, Term, Verdict } from '../judge/types.ts'
import { problemJson } from '../problems/printers/json.ts'
import { toUnit, toUnitDifference } from '../quantity/convert.ts'
import { effectiveDof, expanded, standardUncertainty } from '../quantity/quantity.ts'
import type { Quantity, Unit } from '../quantity/types.ts'

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null)

const spread = (quantity: Quantity, unit: Unit) => {
  const u = standardUncertainty(quantity)
  return {
    value: toUnit(quantity.value, unit),
    u: u === null ? null : toUnitDifference(u, unit),
    unit: unit.text,
  }
}

const measure = (quantity: Quantity, unit: Unit) => {
  const U = expanded(quantity)?.U
  return {
    ...spread(quantity, unit),
    dof: quantity.parts === null ? null : finite(effectiveDof(quantity)),
    U95: U === undefined ? null : toUnitDifference(U, unit),
  }
}

const term = (each: Term) => ({
  ...spread(each.value, each.unit),
  limits: each.limits.map((limit) => toUnit(limit.value, each.unit)),
  margin: toUnitDifference(each.margin.value, each.unit),
  probability: each.probability,
  verdict: each.verdict,
})

const criterion = (judgement: Judgement, asRun: Verdict | null) => ({
  id: judgement.criterion,
  accept: judgement.accept,
  rule: judgement.rule.text,
  verdict: judgement.verdict,
  asRun,
  terms: judgement.terms.map(term),
})

/** Those of today, and those of the card as run that are gone and still count. */
const criteriaOf = ({ judgements, counting, asRun }: Run) => {
  const then = new Map(asRun?.judgements.map(({ criterion, verdict }) => [criterion, verdict]))
  const verdictThen = (id: string): Verdict | null =>
    asRun === null ? null : asRun.unreadable === null ? (then.get(id) ?? null) : 'undetermined'
  const gone = counting.filter((one) => !judgements.some(({ criterion }) => criterion === one.criterion))
  return [...judgements, ...gone].map((judgement) => criterion(judgement, verdictThen(judgement.criterion)))
}

const provenance = ({ recorded, reviewed, amended, state }: Provenance) => ({
  recorded,
  reviewed: reviewed.map(({ by, how, commit }) => ({ by, how, commit })),
  amended,
  state,
})

const run = (each: Run) => {
  const measures = { ...each.computed?.measures, ...each.computed?.derived }
  return {
    id: each.id,
    card: each.card.id,
    article: each.article,
    when: each.record.when.text,
    round: each.round,
    verdict: each.verdict,
    void: each.record.void !== undefined,
    stopped: each.record.stopped !== undefined,
    reasons: each.reasons,
    measures: Object.fromEntries(
      Object.entries(measures).map(([name, quantity]) => [
        name,
        measure(quantity, each.units[name] ?? measureUnit(each.card, name, quantity.dim)),
      ]),
    ),
    criteria: criteriaOf(each),
    provenance: provenance(each.provenance),
  }
}

const roundCriteria = (round: Round | undefined) =>
  (round?.judgements ?? []).map((judgement) =>
    criterion(judgement, round?.asRun?.[judgement.criterion] ?? null),
  )

const card = (state: CardState) => ({
  id: state.id,
  method: state.card.method,
  article: state.article,
  status: state.status,
  round: state.round,
  criteria: roundCriteria(state.rounds.at(-1)),
  targets: Object.fromEntries(
    Object.entries(state.targets).map(([name, { value, unit }]) => [name, spread(value, unit)]),
  ),
})

const item = ({ id, kind, title, about, gates, owner, since, closes }: OpenItem) => ({
  id,
  kind,
  title,
  about,
  gates,
  owner,
  since,
  closes,
})

export const checkJson = (campaign: Campaign) => ({
  schema: 1,
  tool: campaign.tool,
  problems: campaign.problems.map(problemJson),
  runs: campaign.runs.map(run),
  cards: campaign.cards.map(card),
  gates: campaign.gates.map(({ id, state, overtaken, heldBy }) => ({ id, state, overtaken, heldBy })),
  items: campaign.items.map(item),
})
