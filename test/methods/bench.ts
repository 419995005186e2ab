/** One simulated run from truth to verdict, as the pipeline does it: rehearse, measure, conditions, judge. */
import type { Plain } from '../../src/format/types.ts'
import { judgeCriterion } from '../../src/judge/judge.ts'
import type { Verdict } from '../../src/judge/types.ts'
import { type Measured, measureRun } from '../../src/methods/measure.ts'
import type { Columns, Instruments, Method } from '../../src/methods/method.ts'
import { parseFormula, prepareFormulas } from '../../src/quantity/formula/index.ts'
import { expanded } from '../../src/quantity/quantity.ts'
import { normal, random } from '../../src/quantity/random.ts'
import type { Quantity } from '../../src/quantity/types.ts'
import { parseUnit } from '../../src/quantity/unit-text.ts'

await prepareFormulas()

export type Setup = {
  readonly method: Method
  readonly inputs: Readonly<Record<string, Quantity>>
  readonly words?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments: Instruments
}

export type Truth = Readonly<Record<string, number>>

export const givensOf = ({ inputs, words, fields }: Setup) => ({
  numbers: Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value])),
  words: words ?? {},
  fields: fields ?? {},
  dims: Object.fromEntries(Object.entries(inputs).map(([name, { dim }]) => [name, dim])),
})

export const rehearsed = (setup: Setup, truth: Truth, seed: number): Columns =>
  setup.method.rehearse(givensOf(setup), truth, setup.instruments, seed)

export const tryMeasure = (setup: Setup, columns: Columns) => {
  const { method, inputs, words, instruments, fields = {} } = setup
  const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
  const schema = method.describe?.(fields, Object.keys(columns), dims) ?? method.schema
  return measureRun({
    runId: 'simulated',
    method,
    schema,
    columns,
    instruments,
    inputs,
    words: words ?? {},
    fields,
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

/** One criterion judged, guarded at 95 %. */
export const judged = (
  setup: Setup,
  columns: Columns,
  accept: string,
): { readonly verdict: Verdict; readonly reasons: readonly string[] } => {
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
  return judgement.ok ? judgement.value : { verdict: 'undetermined', reasons: [judgement.error] }
}

export const verdictOf = (setup: Setup, columns: Columns, accept: string): Verdict =>
  judged(setup, columns, accept).verdict

/** Share of so many simulated runs in which the criterion passes. */
export const passes = (setup: Setup, truth: Truth, accept: string, runs: number): number => {
  let passed = 0
  for (let seed = 1; seed <= runs; seed += 1)
    if (verdictOf(setup, rehearsed(setup, truth, seed), accept) === 'pass') passed += 1
  return passed / runs
}

/** The knowns as somebody measured them: off from their true value by what their uncertainty allows. */
const drawn = (setup: Setup, seed: number): Setup => {
  const generator = random(1_000_003 * seed)
  const inputs = Object.entries(setup.inputs).map(([name, quantity]) => {
    const u = Object.values(quantity.parts ?? {}).reduce((sum, part) => sum + part.u, 0)
    return [name, { ...quantity, value: quantity.value + u * normal(generator) }]
  })
  return { ...setup, inputs: Object.fromEntries(inputs) }
}

/** For each measure, the share of so many runs whose 95 % interval holds the truth. */
export const coverageOf = (
  setup: Setup,
  truth: Truth,
  expected: Readonly<Record<string, number>>,
  runs: number,
): Record<string, number> => {
  const held: Record<string, number> = Object.fromEntries(Object.keys(expected).map((name) => [name, 0]))
  for (let seed = 1; seed <= runs; seed += 1) {
    const { measures } = measured(drawn(setup, seed), rehearsed(setup, truth, seed))
    for (const [name, value] of Object.entries(expected)) {
      const quantity = measures[name]
      const U = quantity ? expanded(quantity)?.U : undefined
      if (quantity && U !== undefined && Math.abs(quantity.value - value) <= U)
        held[name] = (held[name] ?? 0) + 1
    }
  }
  return Object.fromEntries(Object.entries(held).map(([name, count]) => [name, count / runs]))
}

/** Names of measures whose intervals hold the truth too seldom or too often. */
export const outOfBounds = (shares: Record<string, number>, runs: number) => {
  const far = 3.9 * Math.sqrt((0.95 * 0.05) / runs)
  return Object.entries(shares).filter(([, share]) => Math.abs(share - 0.95) > far)
}

/** Enough to see an interval that holds the truth in less than 90 %, of set-ups that the kept coverage has not. */
export const RUNS = 300

export const valuesOf = (setup: Setup, columns: Columns): Record<string, number> =>
  Object.fromEntries(
    Object.entries(measured(setup, columns).measures).map(([name, { value }]) => [name, value]),
  )

/** The same rows in another order. */
export const reordered = (columns: Columns, order: readonly number[]): Columns =>
  Object.fromEntries(
    Object.entries(columns).map(([name, column]) => [
      name,
      {
        ...column,
        values: Float64Array.from(order, (row) => column.values[row] ?? Number.NaN),
        ...(column.texts ? { texts: order.map((row) => column.texts?.[row] ?? '') } : {}),
      },
    ]),
  )

/** Values of a column as one number, the same in every row. */
export const withValues = (
  columns: Columns,
  name: string,
  by: (value: number, row: number) => number,
): Columns => {
  const column = columns[name]
  if (!column) throw new Error(`no column ${name}`)
  return { ...columns, [name]: { ...column, values: column.values.map(by) } }
}

/** A card field as the card file gives it. */
export const field = (method: Method, name: string, raw: Plain): unknown => {
  const read = method.schema.cardFields.find((one) => one.name === name)?.read(raw)
  if (!read?.ok) throw new Error(read?.error[0]?.message ?? `no field ${name}`)
  return read.value
}
