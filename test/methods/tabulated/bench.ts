/** A card of formulas from columns to measures and judgement, as the pipeline does it. */

import type { Plain } from '../../../src/format/types.ts'
import { measureRun } from '../../../src/methods/measure.ts'
import type { Column, Columns, Instruments } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/tabulated/index.ts'
import { toSI } from '../../../src/quantity/convert.ts'
import { tCdf } from '../../../src/quantity/distribution.ts'
import { prepareFormulas } from '../../../src/quantity/formula/index.ts'
import { effectiveDof, expanded, standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { parseUnit } from '../../../src/quantity/unit-text.ts'

await prepareFormulas()

export const readField = (name: string, raw: Plain) => {
  const field = method.schema.cardFields.find((each) => each.name === name)
  if (!field) throw new Error(name)
  return field.read(raw)
}

export type Card = {
  readonly columns: Plain
  readonly measures: Plain
  readonly inputs?: Readonly<Record<string, Quantity>>
}

export const fieldsOf = ({ columns, measures }: Card): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries({ columns, measures }).map(([name, raw]) => {
      const read = readField(name, raw)
      if (!read.ok) throw new Error(JSON.stringify(read.error))
      return [name, read.value]
    }),
  )

export const column = (unit: string, values: readonly number[], resolution = 0): Column => {
  const parsed = parseUnit(unit)
  if (!parsed.ok) throw new Error(unit)
  const { factor, dim } = parsed.value
  return {
    values: Float64Array.from(values, (value) => toSI(value, parsed.value)),
    dim,
    resolution: resolution * factor,
  }
}

export const words = (...texts: string[]): Column => ({
  values: new Float64Array(texts.length).fill(Number.NaN),
  texts,
  dim: [0, 0, 0, 0, 0, 0],
  resolution: 0,
})

export const givensOf = (fields: Record<string, unknown>, inputs: Card['inputs'] = {}) => ({
  numbers: Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value])),
  dims: Object.fromEntries(Object.entries(inputs).map(([name, { dim }]) => [name, dim])),
  words: {},
  fields,
})

export const prepared = (card: Card) => {
  const fields = fieldsOf(card)
  const { inputs = {} } = card
  const dims = Object.fromEntries(Object.entries(inputs).map(([name, { dim }]) => [name, dim]))
  const schema = method.describe?.(fields, [], {}, Object.keys(inputs), dims) ?? method.schema
  const givens = givensOf(fields, inputs)
  const measured = (columns: Columns, instruments: Instruments = {}) => {
    const input = { runId: 'one', method, schema, columns, instruments, inputs, words: {}, fields }
    const result = measureRun(input)
    if (!result.ok) throw new Error(result.error)
    return { ...result.value, input }
  }
  const remarks = (columns: Columns) =>
    method.conditions(measured(columns).measures, columns, givens, method.select(columns, givens), 0.95)
  /** Whether `measure < limit` (or `>`) passes at 95 %. */
  const passes = (columns: Columns, instruments: Instruments, name: string, limit: number, sign = 1) => {
    const { measures, selection } = measured(columns, instruments)
    const measure = measures[name]
    if (!measure) return false
    const u = standardUncertainty(measure)
    if (u === null) return false
    const bars = method
      .conditions(measures, columns, givens, selection, 0.95)
      .filter(({ effect, measures: over }) => effect === 'bars-pass' && (!over || over.includes(name)))
    return bars.length === 0 && tCdf((sign * (limit - measure.value)) / u, effectiveDof(measure)) >= 0.95
  }
  return { schema, fields, givens, measured, remarks, passes }
}

export const u = (quantity: Quantity | undefined): number =>
  (quantity && standardUncertainty(quantity)) ?? Number.NaN

/** Share of runs whose 95 % interval holds the true value. */
export const coverage = (runs: readonly (Quantity | undefined)[], truth: number): number =>
  runs.filter((quantity) => {
    const U = quantity && expanded(quantity)?.U
    return quantity !== undefined && U !== undefined && Math.abs(quantity.value - truth) <= U
  }).length / runs.length
