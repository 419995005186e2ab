/**
 * The check values of a method: published or independent numbers as data, run through the very code that judges
 * runs. Tests hold the code to them and the handbook prints both side by side.
 */
import type { Plain } from '../format/types.ts'
import { toSI, toUnit, toUnitDifference } from '../quantity/convert.ts'
import { exact, fromStated, standardUncertainty } from '../quantity/quantity.ts'
import { parseStated } from '../quantity/quantity-text.ts'
import type { Dimension, Quantity, Unit } from '../quantity/types.ts'
import { parseUnit } from '../quantity/unit-text.ts'
import { measureRun } from './measure.ts'
import type { Column, Method, Schema } from './method.ts'

export type CheckValue = {
  readonly title: string
  readonly origin: 'published' | 'independent program' | 'by hand'
  /** Where the numbers come from, with clause, table or edition. */
  readonly source: string
  readonly inputs: {
    readonly columns: Readonly<
      Record<string, { readonly unit: string; readonly values: readonly (number | string)[] }>
    >
    readonly givens?: Readonly<Record<string, string>>
    readonly fields?: Readonly<Record<string, Plain>>
  }
  readonly expected: Readonly<
    Record<
      string,
      { readonly value: number; readonly unit: string; readonly tolerance: number; readonly u?: number }
    >
  >
}

export type CheckedRow = {
  readonly measure: string
  readonly unit: string
  readonly expected: number
  readonly computed: number
  readonly tolerance: number
  readonly expectedU: number | null
  readonly computedU: number | null
  readonly agrees: boolean
}

const unitOf = (text: string): Unit => {
  const unit = parseUnit(text)
  if (!unit.ok) throw new Error(`${text} is no unit: ${unit.error[0]?.message}`)
  return unit.value
}

const columnOf = ({ unit, values }: CheckValue['inputs']['columns'][string]): Column => {
  if (unit === 'text') {
    const none: Dimension = [0, 0, 0, 0, 0, 0]
    return {
      values: Float64Array.from(values, () => Number.NaN),
      texts: values.map(String),
      dim: none,
      resolution: 0,
    }
  }
  const parsed = unitOf(unit)
  const numbers = Float64Array.from(values, (value) => toSI(Number(value), parsed))
  return { values: numbers, texts: values.map(String), dim: parsed.dim, resolution: 0 }
}

/** Fields of a card as the method reads them. Errors throw: the texts are ours, not a user's. */
export const fieldsFrom = (schema: Schema, raw: Readonly<Record<string, Plain>>): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(raw).map(([name, value]) => {
      const read = schema.cardFields.find((field) => field.name === name)?.read(value)
      if (!read?.ok) throw new Error(`${name} is no field of this method: ${read?.error[0]?.message ?? ''}`)
      return [name, read.value]
    }),
  )

/** Givens as on a card; a setpoint is exact. */
export const givensFrom = (schema: Schema, texts: Readonly<Record<string, string>>) => {
  const inputs: Record<string, Quantity> = {}
  const words: Record<string, string> = {}
  for (const [name, text] of Object.entries(texts)) {
    const role = schema.givens.find((given) => given.name === name)?.role
    const stated = role === 'choice' || role === 'words' ? null : parseStated(text)
    if (!stated?.ok) words[name] = text
    else if (role === 'setpoint' || stated.value.u === null)
      inputs[name] = exact(stated.value.value, stated.value.unit.dim)
    else inputs[name] = fromStated(stated.value, `given:card:check/${name}`)
  }
  return { inputs, words }
}

/** Runs one check value. Errors of the data themselves throw: they are ours, not a user's. */
export const runCheckValue = (method: Method, check: CheckValue): CheckedRow[] => {
  const columns = Object.fromEntries(
    Object.entries(check.inputs.columns).map(([name, column]) => [name, columnOf(column)]),
  )
  const fields = fieldsFrom(method.schema, check.inputs.fields ?? {})
  const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
  const schema = method.describe?.(fields, Object.keys(columns), dims) ?? method.schema
  const { inputs, words } = givensFrom(schema, check.inputs.givens ?? {})
  const measured = measureRun({
    runId: 'check',
    method,
    schema,
    columns,
    instruments: {},
    inputs,
    words,
    fields,
  })
  if (!measured.ok) throw new Error(`${check.title}: ${measured.error}`)
  return Object.entries(check.expected).map(([measure, { value: expected, unit, tolerance, u }]) => {
    const quantity = measured.value.measures[measure]
    const parsed = unitOf(unit)
    const computed = quantity ? toUnit(quantity.value, parsed) : Number.NaN
    const own = quantity ? standardUncertainty(quantity) : null
    const computedU = own === null ? null : toUnitDifference(own, parsed)
    const near = (a: number, b: number) => Math.abs(a - b) <= tolerance
    const agrees = near(computed, expected) && (u === undefined || (computedU !== null && near(computedU, u)))
    return { measure, unit, expected, computed, tolerance, expectedU: u ?? null, computedU, agrees }
  })
}
