/** The formulas of the card over the columns: values, and what the readings leave uncertain of them. */
import { evaluate, evaluateQuantity } from '../../quantity/formula/index.ts'
import { exact } from '../../quantity/quantity.ts'
import type { Part, Quantity, Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { aggregateDimension } from './aggregates.ts'
import { kindsOfMeasures } from './plan.ts'
import { partsOf } from './scatter.ts'
import { asChoice, type Choice, sameReading } from './select.ts'
import { aggregateValue } from './values.ts'

type Numbers = Readonly<Record<string, number>>

const aggregateValues = (columns: Columns, givens: Givens, { picks }: Choice): Numbers =>
  Object.fromEntries([...picks].map(([key, pick]) => [key, aggregateValue(columns, givens, pick)]))

const measureValues = (aggregates: Numbers, givens: Givens, { plan, picks, dims }: Choice): Numbers => {
  const values: Record<string, number> = {}
  for (const measure of plan.measures) {
    if (!dims[measure.name] || sameReading(measure, picks) !== '') continue
    const value = evaluate(measure.rest, { ...givens.numbers, ...values, ...aggregates })
    if (value.ok && Number.isFinite(value.value)) values[measure.name] = value.value
  }
  return values
}

/** Aggregates as quantities whose parts are scatter and digits alone; the general formulas carry them on. */
const scatterOfMeasures = (
  columns: Columns,
  givens: Givens,
  { plan, picks }: Choice,
  aggregates: Numbers,
  values: Numbers,
): Estimate['scatter'] => {
  const parts = partsOf(columns, givens, [...picks.values()])
  const scope: Record<string, Quantity> = {}
  for (const [name, value] of Object.entries(givens.numbers)) {
    const dim = givens.dims?.[name]
    if (dim) scope[name] = exact(value, dim)
  }
  for (const [key, { aggregate }] of picks) {
    const value = aggregates[key] ?? Number.NaN
    if (Number.isFinite(value))
      scope[key] = { value, dim: aggregateDimension(aggregate), parts: parts[key] ?? {}, why: [] }
  }
  const scatter: Record<string, Readonly<Record<string, Part>>> = {}
  for (const { name, rest } of plan.measures) {
    if (values[name] === undefined) continue
    const quantity = evaluateQuantity(rest, scope)
    if (!quantity.ok) continue
    scope[name] = quantity.value
    scatter[name] = quantity.value.parts ?? {}
  }
  return scatter
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const choice = asChoice(selection)
  if (choice.plan.measures.length === 0)
    return { ok: false, error: 'no measure of the card can be computed: see the problems of the card' }
  const aggregates = aggregateValues(columns, givens, choice)
  const values = measureValues(aggregates, givens, choice)
  // The digits are in the scatter, by what each aggregate takes: a digit or more of it tells the engine so.
  const residual = Object.fromEntries(
    Object.entries(columns).map(([name, { resolution }]) => [name, resolution]),
  )
  return {
    ok: true,
    value: {
      values,
      residual,
      // Only the first of all estimates of a run is asked for these.
      get scatter() {
        return scatterOfMeasures(columns, givens, choice, aggregates, values)
      },
      get kinds() {
        const kinds = Object.entries(kindsOfMeasures(choice.plan, choice.dims))
        return Object.fromEntries(kinds.flatMap(([name, kind]) => (kind ? [[name, kind]] : [])))
      },
      dims: choice.dims,
    },
  }
}
