/** One simulated ring-down from truth to measures and bars, as the pipeline does it. */
import { type Measured, measureRun } from '../../../src/methods/measure.ts'
import type { Columns, InstrumentModel, Instruments } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/ring-down/index.ts'
import { tCdf } from '../../../src/quantity/distribution.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { effectiveDof, exact, expanded, standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { instrument } from '../parts.ts'

export type Truth = Readonly<Record<string, number>>

export const sensor = (more: Partial<InstrumentModel> = {}): InstrumentModel =>
  instrument('acc-1', { gain: 0.02, offset: 0.01, ...more })

export type Setup = {
  readonly settle?: number
  readonly clockError?: number
  readonly fields?: Readonly<Record<string, unknown>>
  readonly instruments?: Instruments
}

const inputsOf = ({ settle, clockError }: Setup): Record<string, Quantity> => ({
  ...(settle === undefined ? {} : { settle: exact(settle, KINDS.time.dim) }),
  ...(clockError === undefined ? {} : { clock_error: exact(clockError, KINDS.number.dim) }),
})

export const record = (truth: Truth, seed: number, setup: Setup = {}): Columns =>
  method.rehearse(
    { numbers: {}, words: {}, fields: {} },
    truth,
    setup.instruments ?? { signal: sensor() },
    seed,
  )

export const measured = (columns: Columns, setup: Setup = {}) =>
  measureRun({
    runId: 'simulated',
    method,
    schema: method.schema,
    columns,
    instruments: setup.instruments ?? { signal: sensor() },
    inputs: inputsOf(setup),
    words: {},
    fields: setup.fields ?? {},
  })

export const run = (columns: Columns, setup: Setup = {}, p = 0.95) => {
  const result = measured(columns, setup)
  if (!result.ok) throw new Error(result.error)
  return withBars(result.value, columns, p)
}

const withBars = (value: Measured, columns: Columns, p: number) => {
  const { measures, givens, selection } = value
  const remarks = method.conditions(measures, columns, givens, selection, p)
  return { ...value, bars: remarks.filter(({ effect }) => effect === 'bars-pass').map(({ text }) => text) }
}

export const inside = (measure: Quantity | undefined, truth: number): boolean =>
  measure !== undefined && Math.abs(measure.value - truth) <= (expanded(measure)?.U ?? 0)

/** Guarded 95 %: damping_ratio > limit. */
export const passesAbove = (columns: Columns, limit: number, setup: Setup = {}): boolean => {
  const result = measured(columns, setup)
  if (!result.ok) return false
  const { measures, bars } = withBars(result.value, columns, 0.95)
  const damping = measures.damping_ratio
  const u = damping ? standardUncertainty(damping) : null
  if (!damping || u === null || bars.length > 0) return false
  return tCdf((damping.value - limit) / u, effectiveDof(damping)) >= 0.95
}
