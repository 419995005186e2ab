/** What an instrument shows of a true course: its own errors, drawn once a run, then noise and digits. */
import { normal, random, rectangular } from '../../quantity/random.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { Column, InstrumentModel } from '../method.ts'
import { extentOf } from './extent.ts'

export const observe = (
  truth: readonly number[],
  model: InstrumentModel,
  dim: Dimension,
  noise: number,
  seed: number,
): Column => {
  const generator = random(seed)
  const error = (u: number | null | undefined) =>
    (u ?? 0) * (model.shape === 'rectangular' ? rectangular(generator) : normal(generator))
  const gain = error(model.gain)
  const offset = error(model.offset) + error(model.calibration)
  // Where no linearity is stated, the span figure of the accuracy also holds it (as the uncertainty takes it).
  const ends = error(model.linearity ?? model.offset)
  const lag = error(model.hysteresis)
  const { low, high } = extentOf(truth)
  const span = high - low
  const middle = low + span / 2
  let direction = 0
  const values = Float64Array.from(truth, (value, row) => {
    direction = Math.sign(value - (truth[row - 1] ?? value)) || direction
    const ramp = span > 0 ? (value - middle) / span : 0
    const shown =
      value * (1 + gain) + offset + Math.SQRT2 * ends * ramp + lag * direction + noise * normal(generator)
    // Adding 0 turns −0 into 0.
    return model.resolution > 0 ? Math.round(shown / model.resolution) * model.resolution + 0 : shown
  })
  return { values, dim, resolution: model.resolution, instrument: model.id }
}
