/** A proof load from truth to verdict, as the pipeline does it: rehearse, measure, conditions, judge. */

import { judgeCriterion } from '../../../src/judge/judge.ts'
import type { Verdict } from '../../../src/judge/types.ts'
import { measureRun } from '../../../src/methods/measure.ts'
import type { Columns, InstrumentModel, Instruments } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/proof-load/index.ts'
import { parseFormula, prepareFormulas } from '../../../src/quantity/formula/index.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { exact } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { parseUnit } from '../../../src/quantity/unit-text.ts'

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

export type Setup = {
  readonly target: number
  readonly hold?: number
  readonly tolerance?: number
  readonly words?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments: Instruments
}

const inputsOf = ({ target, hold = 3, tolerance = 0 }: Setup): Record<string, Quantity> => ({
  target: exact(target, KINDS.force.dim),
  hold: exact(hold, KINDS.time.dim),
  tolerance: exact(tolerance, KINDS.number.dim),
})

export const givensOf = (setup: Setup) => ({
  numbers: Object.fromEntries(Object.entries(inputsOf(setup)).map(([name, { value }]) => [name, value])),
  words: setup.words ?? {},
  fields: setup.fields ?? {},
})

export const measured = (setup: Setup, columns: Columns) => {
  const dims = Object.fromEntries(Object.entries(columns).map(([name, { dim }]) => [name, dim]))
  const result = measureRun({
    runId: 'simulated',
    method,
    schema: method.describe?.({}, Object.keys(columns), dims) ?? method.schema,
    columns,
    instruments: setup.instruments,
    inputs: inputsOf(setup),
    words: setup.words ?? {},
    fields: setup.fields ?? {},
  })
  if (!result.ok) throw new Error(result.error)
  return result.value
}

const ONE = parseUnit('1')
await prepareFormulas()

/** Verdicts of criteria, each guarded at 95 %, with the reasons. */
/** How often all criteria pass in so many simulated runs; `fault` spoils the columns outside `rehearse`. */
export const passes = (
  setup: Setup,
  truth: Readonly<Record<string, number>>,
  criteria: readonly string[],
  count: number,
  fault: (columns: Columns, seed: number) => Columns = (columns) => columns,
): number => {
  let passed = 0
  for (let seed = 1; seed <= count; seed += 1) {
    const columns = fault(method.rehearse(givensOf(setup), truth, setup.instruments, seed), seed)
    if (judged(setup, columns, ...criteria).every(({ verdict }) => verdict === 'pass')) passed += 1
  }
  return passed / count
}

export const judged = (setup: Setup, columns: Columns, ...criteria: string[]) => {
  const { measures, columns: prepared, givens, selection } = measured(setup, columns)
  const remarks = method.conditions(measures, prepared ?? columns, givens, selection, 0.95)
  const bars = remarks.filter((remark) => remark.effect === 'bars-pass')
  return criteria.map((accept): { verdict: Verdict; reasons: readonly string[] } => {
    const formula = parseFormula(accept)
    if (!formula.ok || !ONE.ok) throw new Error(accept)
    const { value: unit } = ONE
    const judgement = judgeCriterion({
      criterion: { id: 'one', accept, rule: { kind: 'guarded', p: 0.95, text: 'guarded 95 %' }, why: '' },
      formula: formula.value,
      scope: {
        values: measures,
        measures: new Set(Object.keys(measures)),
        functions: {},
        positive: new Set(['permanent_set']),
      },
      unitOf: () => unit,
      bars,
      basis: () => [],
      sourceWords: (source) => source,
    })
    if (!judgement.ok) return { verdict: 'undetermined', reasons: [judgement.error] }
    return judgement.value
  })
}
