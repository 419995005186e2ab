/** One simulated run from truth to verdict, as the pipeline does it: rehearse, measure, conditions, judge. */
import { judgeCriterion } from '../../../src/judge/judge.ts'
import type { Verdict } from '../../../src/judge/types.ts'
import { type Measured, measureRun } from '../../../src/methods/measure.ts'
import type { Columns, InstrumentModel, Instruments, Method } from '../../../src/methods/method.ts'
import { parseFormula, prepareFormulas } from '../../../src/quantity/formula/index.ts'
import { KINDS, type Kind } from '../../../src/quantity/kinds.ts'
import { exact } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { parseUnit } from '../../../src/quantity/unit-text.ts'

await prepareFormulas()

export const instrument = (id: string, more: Partial<InstrumentModel> = {}): InstrumentModel => ({
  id,
  label: id,
  resolution: 0,
  gain: 0,
  offset: 0,
  linearity: 0,
  hysteresis: 0,
  drift: 0,
  shape: 'rectangular',
  ...more,
})

/** A given in SI with its standard uncertainty. */
export const known = (name: string, value: number, u: number, kind: Kind): Quantity => {
  const pool = `given:card:test/${name}`
  const parts = { [pool]: { u, dof: Number.POSITIVE_INFINITY, pool, shape: 'normal' } } as const
  return { value, dim: KINDS[kind].dim, parts, why: [] }
}

export const given = (value: number, kind: Kind): Quantity => exact(value, KINDS[kind].dim)

export type Setup = {
  readonly method: Method
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly words?: Readonly<Record<string, string>>
  readonly instruments: Instruments
}

export type Truth = Readonly<Record<string, number>>

export const givensOf = ({ inputs, words }: Setup) => ({
  numbers: Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value])),
  words: words ?? {},
  fields: {},
})

export const rehearsed = (setup: Setup, truth: Truth, seed: number): Columns =>
  setup.method.rehearse(givensOf(setup), truth, setup.instruments, seed)

export const tryMeasure = (setup: Setup, columns: Columns) => {
  const { method, inputs, words, instruments } = setup
  const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
  const schema = method.describe?.({}, Object.keys(columns), dims) ?? method.schema
  return measureRun({
    runId: 'simulated',
    method,
    schema,
    columns,
    instruments,
    inputs,
    words: words ?? {},
    fields: {},
  })
}

export const measured = (setup: Setup, columns: Columns): Measured => {
  const result = tryMeasure(setup, columns)
  if (!result.ok) throw new Error(result.error)
  return result.value
}

export const remarksOf = (setup: Setup, found: Measured, p = 0.95) =>
  setup.method.conditions(found.measures, found.columns, found.givens, found.selection, p)

export const barsOf = (setup: Setup, columns: Columns): string =>
  remarksOf(setup, measured(setup, columns))
    .filter(({ effect }) => effect === 'bars-pass')
    .map(({ text }) => text)
    .join('\n')

const ONE = parseUnit('1')

/** Verdict of one criterion, guarded at 95 %. */
export const verdictOf = (setup: Setup, columns: Columns, accept: string): Verdict => {
  const found = measured(setup, columns)
  const formula = parseFormula(accept)
  if (!formula.ok || !ONE.ok) throw new Error(accept)
  const { value: unit } = ONE
  const judgement = judgeCriterion({
    criterion: { id: 'one', accept, rule: { kind: 'guarded', p: 0.95, text: 'guarded 95 %' }, why: '' },
    formula: formula.value,
    scope: {
      values: found.measures,
      measures: new Set(Object.keys(found.measures)),
      functions: {},
      positive: new Set(
        setup.method.schema.measures.filter(({ positive }) => positive).map(({ name }) => name),
      ),
    },
    unitOf: () => unit,
    bars: remarksOf(setup, found).filter(({ effect }) => effect === 'bars-pass'),
    basis: () => [],
    sourceWords: (source) => source,
  })
  return judgement.ok ? judgement.value.verdict : 'undetermined'
}

/** Share of so many simulated runs in which the criterion passes. */
export const passes = (setup: Setup, truth: Truth, accept: string, runs: number): number => {
  let passed = 0
  for (let seed = 1; seed <= runs; seed += 1)
    if (verdictOf(setup, rehearsed(setup, truth, seed), accept) === 'pass') passed += 1
  return passed / runs
}
