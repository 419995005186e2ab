/** Before any test: can instruments that are just as good as the card asks decide each criterion at its limit? */

import type { CardRecord } from '../format/types.ts'
import type { Term } from '../judge/types.ts'
import { givensOf, measureRun } from '../methods/measure.ts'
import type { Method, Schema } from '../methods/method.ts'
import { toUnitDifference } from '../quantity/convert.ts'
import { conjuncts, evaluate, namesIn } from '../quantity/formula/index.ts'
import type { Node } from '../quantity/formula/types.ts'
import { expanded } from '../quantity/quantity.ts'
import type { Quantity } from '../quantity/types.ts'
import { type CardFormulas, evaluateAll, type Functions } from './formulas.ts'
import type { Inputs } from './inputs.ts'
import { modelOfDemand } from './instruments.ts'
import { judgeAll } from './judging.ts'
import { knownBefore } from './targets.ts'
import type { Decidable, Target } from './types.ts'

type Plan = {
  readonly card: CardRecord
  readonly method: Method
  readonly schema: Schema
  readonly formulas: CardFormulas
  readonly functions: Functions
  readonly inputs: Inputs
  readonly targets: Readonly<Record<string, Target>>
}

const SEED = 20260301

/** The truth that puts the measure of a criterion on its limit: `name < limit`, with the limit from what is known before. */
const truthAtLimit = (
  plan: Plan,
  known: Readonly<Record<string, Quantity>>,
  formula: Node,
): Readonly<Record<string, number>> => {
  const compares = conjuncts(formula)
  const measured = new Set(plan.schema.measures.map((field) => field.name))
  const numbers = Object.fromEntries(Object.entries(known).map(([name, { value }]) => [name, value]))
  const truth: Record<string, number> = {}
  for (const compare of compares.ok ? compares.value : []) {
    const subject = compare.operands.find((node) => node.type === 'name' && measured.has(node.name))
    const limit = compare.operands.find(
      (node) => node !== subject && !namesIn(node, plan.functions).some((name) => measured.has(name)),
    )
    const value = limit && evaluate(limit, numbers, plan.functions)
    if (subject?.type === 'name' && value?.ok) truth[subject.name] = value.value
  }
  return truth
}

const sentence = (ratio: number | null): Pick<Decidable, 'verdict' | 'text'> => {
  if (ratio === null)
    return {
      verdict: 'not known',
      text: 'what the card asks of its instruments leaves the uncertainty not known',
    }
  const to = `limit to U is ${ratio.toPrecision(2)} : 1`
  if (ratio < 1) return { verdict: 'no', text: `${to}: even a perfect article could not pass with certainty` }
  if (ratio < 4) return { verdict: 'hardly', text: `${to}: results near the limit will stay undetermined` }
  return { verdict: 'yes', text: to }
}

/** Where the limit is 0 or follows from the readings, U stands alone. */
const withoutRatio = (criterion: string, term: Term): Decidable => {
  const U = expanded(term.value)?.U ?? Number.NaN
  const shown = toUnitDifference(U, term.unit)
  const text = `U is about ${shown.toPrecision(2)} ${term.unit.text}; the limit is no fixed number to set it against`
  return { criterion, verdict: 'not known', text, U: shown, ratio: null, unit: term.unit.text }
}

/** Rehearses the test once at the limit of each criterion. Criteria that no rehearsal reaches are “not known”. */
export const decidable = (plan: Plan): Decidable[] => {
  const { card, method, schema, formulas, functions, inputs } = plan
  const models = Object.fromEntries(
    Object.entries(card.instruments).map(([name, demand]) => [name, modelOfDemand(name, demand)]),
  )
  const known = knownBefore(inputs.numbers, plan.targets)
  const givens = givensOf({ inputs: inputs.numbers, words: inputs.words, fields: card.fields })
  return card.criteria.map((criterion) => {
    const none: Decidable = { criterion: criterion.id, ...sentence(null), U: null, ratio: null, unit: '' }
    const formula = formulas.criteria.get(criterion.id)
    if (!formula) return none
    const every: Readonly<Record<string, number>> = card.every ? { every: card.every.value } : {}
    const truth = { ...method.nominal?.(givens), ...every, ...truthAtLimit(plan, known, formula) }
    const columns = method.rehearse(givens, truth, models, SEED)
    const measured = measureRun({
      runId: 'rehearsal',
      method,
      schema,
      columns,
      instruments: models,
      inputs: inputs.numbers,
      words: inputs.words,
      fields: card.fields,
    })
    if (!measured.ok) return { ...none, text: measured.error }
    const { measures } = measured.value
    const derived = evaluateAll(formulas.derive, { ...known, ...measures }, functions)
    const judged = judgeAll({
      card,
      schema,
      formulas,
      functions,
      measures,
      derived,
      known,
      barsAt: () => [],
    })
    const terms = judged.find((each) => each.criterion === criterion.id)?.terms ?? []
    const [first] = terms
    if (!first) return none
    if (terms.every((term) => term.margin.parts !== null && (expanded(term.margin)?.U ?? 0) === 0)) {
      return {
        criterion: criterion.id,
        verdict: 'yes',
        text: 'a count is exact',
        U: 0,
        ratio: null,
        unit: first.unit.text,
      }
    }
    if (terms.some((term) => term.ratio === null && term.value.parts !== null))
      return withoutRatio(criterion.id, first)
    const ratios = terms.map((term) => term.ratio)
    const worst = ratios.includes(null) ? null : Math.min(...(ratios as number[]))
    const U = expanded(first.value)?.U ?? null
    return {
      criterion: criterion.id,
      ...sentence(worst),
      U: U === null ? null : toUnitDifference(U, first.unit),
      ratio: worst,
      unit: first.unit.text,
    }
  })
}
