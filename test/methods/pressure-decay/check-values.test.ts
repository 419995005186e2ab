/** The check values of the folder against the code; each names its source. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { parseStated } from '../../../src/quantity/quantity-text.ts'
import { parseUnit } from '../../../src/quantity/unit-text.ts'
import { fieldOf, siOf } from './units.ts'

type Check = {
  title: string
  source: string
  inputs: {
    columns: Record<string, { unit: string; values: number[] }>
    givens: Record<string, string>
  }
  expected: Record<string, { value: number; unit: string; tolerance: number }>
}

const folder = new URL('../../../src/methods/pressure-decay/check-values/', import.meta.url)
const checks = readdirSync(folder).flatMap((file) => {
  const parsed: Check | Check[] = JSON.parse(readFileSync(new URL(file, folder), 'utf8'))
  return Array.isArray(parsed) ? parsed : [parsed]
})

const columnsOf = (check: Check): Columns =>
  Object.fromEntries(
    Object.entries(check.inputs.columns).map(([name, { unit, values }]) => [
      name,
      {
        values: Float64Array.from(values, (value) => siOf(value, unit)),
        dim: KINDS[fieldOf('columns', name).kind].dim,
        resolution: 0,
      },
    ]),
  )

const givensOf = (check: Check) => {
  const numbers: Record<string, number> = {}
  const words: Record<string, string> = {}
  for (const [name, text] of Object.entries(check.inputs.givens)) {
    const stated = fieldOf('givens', name).kind === 'text' ? null : parseStated(text)
    if (stated?.ok) numbers[name] = stated.value.value
    else words[name] = text
  }
  return { numbers, words, fields: {} }
}

describe.each(checks)('$title', (check) => {
  test.each(Object.entries(check.expected))(`%s [${check.source}]`, (name, expected) => {
    const columns = columnsOf(check)
    const givens = givensOf(check)
    expect(method.validate?.(columns, givens)).toEqual([])
    const result = method.estimate(columns, givens, method.select(columns, givens))
    if (!result.ok) throw new Error(result.error)
    const unit = parseUnit(expected.unit)
    if (!unit.ok) throw new Error(expected.unit)
    const value = ((result.value.values[name] ?? Number.NaN) - unit.value.offset) / unit.value.factor
    expect(Math.abs(value - expected.value)).toBeLessThanOrEqual(expected.tolerance)
  })
})
