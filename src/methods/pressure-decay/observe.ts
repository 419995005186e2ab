/** What an instrument shows of a true history: its errors are drawn once, its noise at each reading, then digits. */
import { KINDS } from '../../quantity/kinds.ts'
import { type Generator, normal, rectangular } from '../../quantity/random.ts'
import type { Column, InstrumentModel } from '../method.ts'

type Draws = {
  readonly kind: 'pressure' | 'temperature' | 'length'
  /** Standard deviation of the noise at each reading, SI. */
  readonly noise: number
  readonly generator: Generator
}

/** Errors that are not stated are taken as none; linearity and hysteresis do not act where the reading hardly moves. */
export const observe = (
  truth: Float64Array,
  time: Float64Array,
  instrument: InstrumentModel,
  draws: Draws,
): Column => {
  const draw = () => (instrument.shape === 'rectangular' ? rectangular : normal)(draws.generator)
  const gain = (instrument.gain ?? 0) * draw()
  const offset = (instrument.offset ?? 0) * draw()
  const calibration = (instrument.calibration ?? 0) * normal(draws.generator)
  const drift = (instrument.drift ?? 0) * draw()
  // A percentage of a temperature reading is one of degrees Celsius.
  const zero = draws.kind === 'temperature' ? 273.15 : 0
  const r = instrument.resolution
  const start = time[0] ?? 0
  const values = truth.map((value, row) => {
    const error = gain * (value - zero) + offset + calibration + drift * ((time[row] as number) - start)
    const shown = value + error + draws.noise * normal(draws.generator)
    return r > 0 ? zero + Math.round((shown - zero) / r) * r : shown
  })
  return { values, dim: KINDS[draws.kind].dim, resolution: r, instrument: instrument.id }
}
