/** What an instrument shows of a true course: its own errors, drawn once a run, then noise and digits. */
import { normal, random, rectangular } from '../quantity/random.ts'
import type { Dimension } from '../quantity/types.ts'
import type { Column, InstrumentModel } from './method.ts'

export type Course = {
  readonly truth: readonly number[]
  /** Left out: nothing drifts. */
  readonly time?: readonly number[]
  readonly dim: Dimension
  /** Standard deviation of a single reading. */
  readonly noise: number
}

export const asShown = (course: Course, model: InstrumentModel, seed: number): Column => {
  const { truth, time, dim, noise } = course
  const generator = random(seed)
  const error = (u: number | null | undefined) =>
    (u ?? 0) * (model.shape === 'rectangular' ? rectangular(generator) : normal(generator))
  const gain = error(model.gain)
  const offset = error(model.offset) + error(model.calibration)
  // Where no linearity is stated, the span figure of the accuracy also holds it (as the uncertainty takes it).
  const ends = Math.SQRT2 * error(model.linearity ?? model.offset)
  const lag = error(model.hysteresis)
  const drift = time ? error(model.drift) : 0
  // A loop, since a logger file has more values than a call takes arguments.
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of truth) {
    if (value < low) low = value
    if (value > high) high = value
  }
  const span = high - low
  const since = (row: number) => (time?.[row] ?? 0) - (time?.[0] ?? 0)
  const ramp = (value: number) => (span > 0 ? (value - low) / span - 0.5 : 0)
  let direction = 0
  const values = Float64Array.from(truth, (value, row) => {
    direction = Math.sign(value - (truth[row - 1] ?? value)) || direction
    const slow = offset + ends * ramp(value) + lag * direction + drift * since(row)
    const shown = value * (1 + gain) + slow + noise * normal(generator)
    // Adding 0 turns −0 into 0.
    return model.resolution > 0 ? Math.round(shown / model.resolution) * model.resolution + 0 : shown
  })
  return { values, dim, resolution: model.resolution, instrument: model.id }
}

/** An instrument without errors and digits. */
export const IDEAL: InstrumentModel = {
  id: 'ideal',
  label: 'ideal instrument',
  resolution: 0,
  gain: 0,
  offset: 0,
  linearity: 0,
  hysteresis: 0,
  drift: 0,
  shape: 'normal',
}
