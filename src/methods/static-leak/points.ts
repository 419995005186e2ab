/** From readings to the points that are fitted: one a row, or one a block where logged fast. */
import { filled, mapped } from '../../quantity/loops.ts'
import type { Columns, Givens } from '../method.ts'
import { readingsOf, testPressure } from './readings.ts'
import type { Hold } from './select.ts'

export type Points = {
  /** Seconds since the first fitted reading. */
  readonly time: Float64Array
  /** Effective time τ, s: what plain time would have been had the test pressure stood all along. */
  readonly effective: Float64Array
  /** Gauge and absolute pressure in the line, Pa. */
  readonly gauge: Float64Array
  readonly absolute: Float64Array
  /** P* = P T₀/T, Pa. */
  readonly compensated: Float64Array
  /** Mean ambient pressure, and the gauge pressure that the test asks for, Pa. */
  readonly ambient: number
  readonly test: number
  /** Mean of p over the stated pressure, by time. */
  readonly meanRatio: number
}

/** Mean of a quantity that decays exponentially from a to b; the plain mean where they are alike or differ in sign. */
const decayingMean = (a: number, b: number): number => {
  const ratio = b / a
  return ratio > 0 && Math.abs(ratio - 1) > 1e-6 ? (b - a) / Math.log(ratio) : (a + b) / 2
}

const mean = (values: Float64Array, from: number, to: number): number => {
  let sum = 0
  for (let k = from; k < to; k += 1) sum += values[k] as number
  return sum / (to - from)
}

/**
 * The gas of a tight line keeps P/T: P* = P T₀/T stands still. A laminar leak follows the gauge pressure, so P* is
 * straight on τ = ∫ p/p_T dt, and the slope is the rate at the stated pressure.
 */
export const pointsOf = (columns: Columns, givens: Givens, hold: Hold): Points => {
  const { rows, starts, span } = hold
  const readings = readingsOf(columns, givens, span)
  const each = (of: (row: number) => number) => mapped(rows, of)
  const time = each((row) => readings.time(row) - span.start)
  const gauge = each(readings.gauge)
  const ambients = each(readings.ambient)
  const temperatures = each(readings.temperature)
  const first = temperatures[0] as number
  const absolute = mapped(gauge, (p, k) => p + (ambients[k] as number))
  const compensated = mapped(absolute, (P, k) => (P * first) / (temperatures[k] as number))
  const ambient = mean(ambients, 0, ambients.length)
  const test = testPressure(givens, ambient)

  const effective = new Float64Array(rows.length)
  for (let k = 1; k < rows.length; k += 1) {
    const lasts = (time[k] as number) - (time[k - 1] as number)
    const between = decayingMean(gauge[k - 1] as number, gauge[k] as number)
    effective[k] = (effective[k - 1] as number) + (lasts * between) / test
  }
  const blocks = (values: Float64Array) =>
    filled(starts.length - 1, (b) => mean(values, starts[b] as number, starts[b + 1] as number))
  const length = span.end - span.start
  return {
    time: blocks(time),
    effective: blocks(effective),
    gauge: blocks(gauge),
    absolute: blocks(absolute),
    compensated: blocks(compensated),
    ambient,
    test,
    meanRatio: length > 0 ? (effective[effective.length - 1] as number) / length : Number.NaN,
  }
}
