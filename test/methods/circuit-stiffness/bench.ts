/** Columns, instruments and whole simulated runs for the tests of this method. */

import method from '../../../src/methods/circuit-stiffness/index.ts'
import { describe as schemaFor } from '../../../src/methods/circuit-stiffness/schema.ts'
import { type Measured, measureRun } from '../../../src/methods/measure.ts'
import type { Columns, Givens, InstrumentModel } from '../../../src/methods/method.ts'
import { tCdf } from '../../../src/quantity/distribution.ts'
import { KINDS, type Kind } from '../../../src/quantity/kinds.ts'
import { effectiveDof, exact, standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'

export const column = (kind: Kind, values: readonly number[], resolution = 0) => ({
  values: Float64Array.from(values),
  dim: KINDS[kind].dim,
  resolution,
})

export const gauge = (id: string, more: Partial<InstrumentModel> = {}): InstrumentModel => ({
  id,
  label: id,
  resolution: 0.01,
  gain: 0,
  offset: 0,
  linearity: 0,
  hysteresis: 0,
  drift: null,
  shape: 'rectangular',
  ...more,
})

export const known = (name: string, value: number, u: number, kind: Kind): Quantity => ({
  value,
  dim: KINDS[kind].dim,
  parts: {
    [`given:card:x/${name}`]: {
      u,
      dof: Number.POSITIVE_INFINITY,
      pool: `given:card:x/${name}`,
      shape: 'normal',
    },
  },
  why: [],
})

export const given = (value: number, kind: Kind): Quantity => exact(value, KINDS[kind].dim)

export type Bench = {
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly words?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments: Readonly<Record<string, InstrumentModel>>
}

const WORDS = { loaded_end: 'surface', locked_at: 'stick, clamped' }

export const givensFor = ({ inputs, words = {}, fields = {} }: Bench): Givens => ({
  numbers: Object.fromEntries(Object.entries(inputs).map(([name, each]) => [name, each.value])),
  dims: Object.fromEntries(Object.entries(inputs).map(([name, each]) => [name, each.dim])),
  words: { ...WORDS, ...words },
  fields,
})

export const measured = (bench: Bench, columns: Columns): Measured => {
  const result = measureRun({
    runId: 'run',
    method,
    schema: schemaFor(bench.fields ?? {}),
    columns,
    instruments: bench.instruments,
    inputs: bench.inputs,
    words: { ...WORDS, ...bench.words },
    fields: bench.fields ?? {},
  })
  if (!result.ok) throw new Error(result.error)
  return result.value
}

export const bars = (bench: Bench, columns: Columns, of: Measured, p = 0.95): string[] =>
  method
    .conditions(of.measures, columns, givensFor(bench), of.selection, p)
    .filter((remark) => remark.effect === 'bars-pass')
    .map((remark) => remark.text)

/** Passes `measure > limit` under a guarded 95 % rule, with nothing that bars it. */
export const passes = (bench: Bench, columns: Columns, measure: string, limit: number): boolean => {
  const of = measured(bench, columns)
  const quantity = of.measures[measure]
  if (!quantity) return false
  const u = standardUncertainty(quantity)
  if (u === null || !(tCdf((quantity.value - limit) / u, effectiveDof(quantity)) >= 0.95)) return false
  return bars(bench, columns, of).length === 0
}

export const rehearsed = (bench: Bench, truth: Readonly<Record<string, number>>, seed: number): Columns =>
  method.rehearse(givensFor(bench), truth, bench.instruments, seed)

/** Share of simulated runs that pass. */
export const passRate = (
  count: number,
  bench: Bench,
  truth: Readonly<Record<string, number>>,
  measure: string,
  limit: number,
  fault: (columns: Columns, seed: number) => Columns = (columns) => columns,
): number => {
  let passed = 0
  for (let seed = 1; seed <= count; seed += 1)
    if (passes(bench, fault(rehearsed(bench, truth, seed), seed), measure, limit)) passed += 1
  return passed / count
}
