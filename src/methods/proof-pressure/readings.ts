/** The readings as the method looks at them: target, movement of the skin, and what a pressure reading makes sure. */
import { mapped } from '../../quantity/loops.ts'
import type { Column, Columns, Givens, InstrumentModel, Instruments } from '../method.ts'

const GRAVITY = 9.80665
/** One-sided normal deviate for 95 %: a reading is at the target with confidence when it is that far above. */
const ONE_SIDED_95 = 1.6448536269514722

export const at = (column: Column | undefined, row: number): number => column?.values[row] ?? Number.NaN

/** Gauge pressure to be reached, Pa: as given, else ρ n g₀ h + p_vent. NaN where neither can be had. */
export const targetOf = ({ numbers }: Givens): number => {
  const { target, density, load_factor, column, vent_pressure } = numbers
  if (target !== undefined) return target
  return (
    (density ?? Number.NaN) * (load_factor ?? Number.NaN) * GRAVITY * (column ?? Number.NaN) +
    (vent_pressure ?? 0)
  )
}

export const signOf = (givens: Givens): 1 | -1 => (targetOf(givens) < 0 ? -1 : 1)

export const stationsOf = (names: readonly string[]): string[] =>
  names.filter((name) => name.startsWith('station_'))

export const suffixOf = (station: string): string => station.replace('station_', '')

/** Movement of the skin at a station, m: the dial less what it stands on. NaN where either is missing. */
export const movementOf = (columns: Columns, station: string): Float64Array => {
  const base = columns[`base_${suffixOf(station)}`]
  const values = columns[station]?.values ?? new Float64Array()
  return base ? mapped(values, (value, row) => value - at(base, row)) : values
}

/** Size of one digit of that movement. */
export const digitOf = (columns: Columns, station: string): number =>
  Math.hypot(columns[station]?.resolution ?? 0, columns[`base_${suffixOf(station)}`]?.resolution ?? 0)

/** Up to here the structure counts as unloaded: three digits of the gauge, or 2 % of the target. */
export const bandOf = (columns: Columns, givens: Givens): number =>
  Math.max(3 * (columns.pressure?.resolution ?? 0), 0.02 * Math.abs(targetOf(givens)))

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** Mean of a series over rows; NaN over none. */
export const over = (values: ArrayLike<number>, rows: readonly number[]): number => {
  let sum = 0
  for (const row of rows) sum += values[row] ?? Number.NaN
  return sum / rows.length
}

/** Standard uncertainty of one reading of the gauge, Pa; NaN where its accuracy is not known. */
const uncertaintyAt = (reading: number, resolution: number, model: InstrumentModel | undefined): number => {
  const digit = resolution / Math.sqrt(6)
  if (!model) return digit
  if (model.gain === null || model.offset === null) return Number.NaN
  const linearity = (model.linearity ?? model.offset) / Math.SQRT2
  const { gain, offset, hysteresis, calibration } = model
  return Math.hypot(gain * reading, offset, linearity, hysteresis ?? 0, calibration ?? 0, digit)
}

/**
 * Adds `pressure_guard`: by how much each reading must lie above a level to be there with 95 % confidence. What a
 * gauge makes sure belongs to the choice of rows and so must be known before they are chosen.
 */
export const prepare = (columns: Columns, _: Givens, instruments: Instruments): Columns => {
  const { pressure } = columns
  if (!pressure || columns.pressure_guard) return columns
  const values = pressure.values.map(
    (reading) => ONE_SIDED_95 * uncertaintyAt(reading, pressure.resolution, instruments.pressure),
  )
  return { ...columns, pressure_guard: { values, dim: pressure.dim, resolution: 0 } }
}
