/** One simulated line from truth to measures, bars and verdict, as the pipeline does it. */
import { measureRun } from '../../../src/methods/measure.ts'
import type { Columns, Instruments } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/static-leak/index.ts'
import { tCdf } from '../../../src/quantity/distribution.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { effectiveDof, exact, expanded, standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { instrument } from '../parts.ts'

export const FOOT = 0.3048
export const KNOT = 1852 / 3600
export type Truth = Readonly<Record<string, number>>

export type Setup = {
  readonly side: 'static' | 'pitot'
  readonly numbers: Truth
  readonly instruments: Instruments
}

const inputsOf = ({ numbers }: Setup): Record<string, Quantity> =>
  Object.fromEntries(
    Object.entries(numbers).map(([name, value]) => {
      const field = method.schema.givens.find((given) => given.name === name)
      return [name, exact(value, KINDS[field?.kind ?? 'number'].dim)]
    }),
  )

export const record = (setup: Setup, truth: Truth, seed: number): Columns =>
  method.rehearse(
    { numbers: setup.numbers, words: { side: setup.side }, fields: {} },
    truth,
    setup.instruments,
    seed,
  )

export const run = (setup: Setup, columns: Columns) => {
  const result = measureRun({
    runId: 'simulated',
    method,
    schema: method.schema,
    columns,
    instruments: setup.instruments,
    inputs: inputsOf(setup),
    words: { side: setup.side },
    fields: {},
  })
  if (!result.ok) throw new Error(result.error)
  const { measures, givens, selection } = result.value
  const remarks = method.conditions(measures, columns, givens, selection, 0.95)
  return { measures, bars: remarks.filter(({ effect }) => effect === 'bars-pass').map(({ text }) => text) }
}

export const inside = (measure: Quantity | undefined, truth: number): boolean =>
  measure !== undefined && Math.abs(measure.value - truth) <= (expanded(measure)?.U ?? 0)

/** Guarded 95 %: loss < limit. */
export const passes = (setup: Setup, columns: Columns, limit: number): boolean => {
  const { measures, bars } = run(setup, columns)
  const loss = measures[setup.side === 'pitot' ? 'airspeed_loss' : 'altitude_loss']
  const u = loss ? standardUncertainty(loss) : null
  if (!loss || u === null || bars.length > 0) return false
  if (loss.value < -(expanded(loss)?.U ?? 0)) return false
  return tCdf((limit - loss.value) / u, effectiveDof(loss)) >= 0.95
}

const limits = (halfWidth: number): number => halfWidth / Math.sqrt(3)

/** Invented: a digital altimeter with 1 ft digits, and an airspeed indicator with 0.1 kt digits. */
export const staticLine: Setup = {
  side: 'static',
  numbers: { test_climb: 1000 * FOOT, field_altitude: 400, temperature_error: 0.05, hold: 60 },
  instruments: {
    altitude: instrument('al-1', {
      resolution: FOOT,
      offset: limits(20 * FOOT),
      drift: limits(5 * FOOT) / 3600,
    }),
    temperature: instrument('th-1', { resolution: 0.01, offset: limits(0.2) }),
  },
}

export const pitotLine: Setup = {
  side: 'pitot',
  numbers: { test_airspeed: 150 * KNOT, temperature_error: 0.05, hold: 60 },
  instruments: {
    airspeed: instrument('as-1', { resolution: 0.1 * KNOT, offset: limits(2 * KNOT), drift: 0 }),
    temperature: instrument('th-1', { resolution: 0.01, offset: limits(0.2) }),
  },
}
