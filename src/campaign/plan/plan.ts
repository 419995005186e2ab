/** What a card asks for on one article before any test: the method's plan, from givens, instruments and earlier runs. */
import type { CardRecord, Records } from '../../format/types.ts'
import { givensOf } from '../../methods/measure.ts'
import type { Method, Schema } from '../../methods/method.ts'
import type { Plan, PlanContext } from '../../methods/plan.ts'
import type { CardFormulas, Functions } from '../formulas.ts'
import type { Inputs } from '../inputs.ts'
import { modelOfDemand } from '../instruments.ts'
import { differenceOf } from '../stated.ts'
import type { Run, Target } from '../types.ts'
import { gaugeUnit, instrumentFor, plannedColumns } from './gauges.ts'
import { planLimits } from './limits.ts'

export type PlanInput = {
  readonly card: CardRecord
  readonly article: string
  readonly method: Method
  readonly schema: Schema
  readonly formulas: CardFormulas
  readonly functions: Functions
  readonly inputs: Inputs
  readonly targets: Readonly<Record<string, Target>>
  readonly records: Pick<Records, 'instruments'>
  readonly runs: readonly Run[]
  readonly asOf: string
}

const values = (of: Readonly<Record<string, { readonly value: number }>>): Record<string, number> =>
  Object.fromEntries(Object.entries(of).map(([name, { value }]) => [name, value]))

/** What runs of this card on this article gave, the newest first; a withdrawn run says nothing. */
const earlierRuns = ({ runs, card, article }: PlanInput): PlanContext['earlier'] =>
  runs
    .filter((run) => run.card.id === card.id && run.article === article && !run.record.void)
    .flatMap((run) => (run.computed ? [{ run: run.id, measures: run.computed.measures }] : []))
    .reverse()

const contextOf = (input: PlanInput): PlanContext => {
  const { card, schema, formulas, functions, inputs, targets, records, runs, asOf } = input
  const bench = { records, runs, card, day: asOf }
  const worked = Object.fromEntries(Object.entries(targets).map(([name, { value }]) => [name, value.value]))
  const gauges = plannedColumns(bench, schema).map((field) => {
    const unit = gaugeUnit(bench, field)
    const digit = instrumentFor(bench, field.name)?.resolution
    const gauge = { dim: unit.dim, unit: unit.factor, ...(digit ? { digit: differenceOf(digit) } : {}) }
    return [field.name, gauge] as const
  })
  return {
    ...(card.every ? { every: card.every.value } : {}),
    stopAt: values(card.stopAt),
    targets: worked,
    gauges: Object.fromEntries(gauges),
    limits: planLimits({
      card,
      schema,
      formulas,
      functions,
      numbers: { ...values(inputs.numbers), ...worked },
    }),
    earlier: earlierRuns(input),
  }
}

export const planOf = (input: PlanInput): Plan | null => {
  const { card, method, inputs } = input
  const instruments = Object.fromEntries(
    Object.entries(card.instruments).map(([name, demand]) => [name, modelOfDemand(name, demand)]),
  )
  const givens = givensOf({ inputs: inputs.numbers, words: inputs.words, fields: card.fields })
  return method.plan?.(givens, instruments, contextOf(input)) ?? null
}
