/** Check values of a method: inputs from outside the project, what is expected of them, and what the method gives. */
import type { Column, Columns, Givens, Method } from '../methods/method.ts'
import { converter, differenceToSI, toUnit } from '../quantity/convert.ts'
import { parseStated } from '../quantity/quantity-text.ts'
import { parseUnit } from '../quantity/unit-text.ts'
import { DIMENSIONLESS } from '../quantity/dimension.ts'
import { numberText } from './show.ts'
import type { Rich } from './view.ts'
import { nameWords } from './words.ts'

export type CheckValue = {
  readonly title: string
  readonly origin: string
  readonly source: string
  readonly inputs: {
    readonly columns: Readonly<Record<string, { readonly unit: string; readonly values: readonly (number | string | null)[] }>>
    readonly givens?: Readonly<Record<string, string>>
    readonly fields?: Readonly<Record<string, unknown>>
  }
  readonly expected: Readonly<Record<string, { readonly value: number; readonly unit: string; readonly tolerance: number }>>
}

/** The last digit that the numbers of a column are written to. */
const finestDigit = (values: readonly number[]): number => 10 ** -Math.max(0, ...values.map((value) => (String(value).split('.')[1] ?? '').length))

const columnOf = ({ unit, values }: CheckValue['inputs']['columns'][string]): Column => {
  if (unit === 'text') {
    return { values: new Float64Array(values.length).fill(Number.NaN), texts: values.map((value) => String(value ?? '')), dim: DIMENSIONLESS, resolution: 0 }
  }
  const parsed = parseUnit(unit)
  const numbers = values.map((value) => (typeof value === 'number' ? value : Number.NaN))
  if (!parsed.ok) return { values: Float64Array.from(numbers), dim: DIMENSIONLESS, resolution: 0 }
  return {
    values: Float64Array.from(numbers, converter(parsed.value)),
    missing: Uint8Array.from(numbers, (value) => (Number.isNaN(value) ? 1 : 0)),
    dim: parsed.value.dim,
    resolution: differenceToSI(finestDigit(numbers), parsed.value),
  }
}

const givensOf = (check: CheckValue, method: Method): Givens => {
  const numbers: Record<string, number> = {}
  const words: Record<string, string> = {}
  for (const [name, written] of Object.entries(check.inputs.givens ?? {})) {
    const role = method.schema.givens.find((given) => given.name === name)?.role
    const stated = role === 'choice' || role === 'words' ? null : parseStated(written)
    if (stated?.ok) numbers[name] = stated.value.value
    else words[name] = written
  }
  return { numbers, words, fields: check.inputs.fields ?? {} }
}

/** In SI; null where the method gives no result, which the handbook then says. */
export const computeCheck = (method: Method, check: CheckValue): Readonly<Record<string, number>> | null => {
  const columns: Columns = Object.fromEntries(Object.entries(check.inputs.columns).map(([name, column]) => [name, columnOf(column)]))
  const givens = givensOf(check, method)
  const estimate = method.estimate(columns, givens, method.select(columns, givens))
  return estimate.ok ? estimate.value.values : null
}

export const checkRows = (method: Method, checks: readonly CheckValue[]): Rich[][] =>
  checks.flatMap((check) => {
    const values = computeCheck(method, check)
    return Object.entries(check.expected).map(([name, expected]): Rich[] => {
      const unit = parseUnit(expected.unit)
      const si = values?.[name]
      const computed = si === undefined || !unit.ok ? null : toUnit(si, unit.value)
      const difference = computed === null ? null : computed - expected.value
      const shown = (x: number): string => `${numberText(x, 7)}${expected.unit === '1' ? '' : ` ${expected.unit}`}`
      return [
        [check.title],
        [nameWords(name)],
        [shown(expected.value)],
        [computed === null ? 'no result' : shown(computed)],
        difference === null ? [] : [numberText(difference, 2)],
        [`relative ${expected.tolerance}`],
      ]
    })
  })
