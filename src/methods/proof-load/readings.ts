/** The readings as the method looks at them: which rows count as load, and what a load reading makes sure. */
import type { Column, Columns, Givens, InstrumentModel, Instruments } from '../method.ts'

/** One-sided normal deviate for 95 %: a reading is at the target with confidence when it is that far above. */
const ONE_SIDED_95 = 1.6448536269514722

export const at = (column: Column | undefined, row: number): number => column?.values[row] ?? Number.NaN

/** Mean of these rows; NaN where one of them is missing, or for none. */
export const meanOver = (values: Float64Array, rows: readonly number[]): number => {
  let sum = 0
  for (const row of rows) sum += values[row] ?? Number.NaN
  return sum / rows.length
}

/** Mean of those rows that were read; NaN for none. */
export const meanOfRead = (values: Float64Array, rows: readonly number[]): number => {
  let sum = 0
  let count = 0
  for (const row of rows) {
    const value = values[row] ?? Number.NaN
    if (Number.isNaN(value)) continue
    sum += value
    count += 1
  }
  return sum / count
}

/** Direction of loading: +1 or −1, as the sign of the target. */
export const signOf = (givens: Givens): 1 | -1 => ((givens.numbers.target ?? Number.NaN) < 0 ? -1 : 1)

/** Shortest hold in s; the schema's default where the givens carry none. */
export const holdOf = (givens: Givens): number => givens.numbers.hold ?? 3

/** Load in the direction of the target from which on a reading counts as being at it. */
export const levelOf = (givens: Givens): number =>
  Math.abs(givens.numbers.target ?? Number.NaN) * (1 - (givens.numbers.tolerance ?? 0))

export const phaseOf = (columns: Columns, row: number): string => columns.phase?.texts?.[row] ?? ''

/** Rows whose load was read live: neither a peak-hold reading nor missing. */
export const liveRows = (columns: Columns, givens: Givens): number[] => {
  if (givens.fields.scale === 'peak-hold') return []
  const rows = Array.from(columns.load?.values ?? [], (_, row) => row)
  return rows.filter((row) => phaseOf(columns, row) !== 'peak' && !Number.isNaN(at(columns.load, row)))
}

/** Up to here the article counts as unloaded: three digits of the scale, or 2 % of the target. */
export const bandOf = (columns: Columns, givens: Givens): number =>
  Math.max(3 * (columns.load?.resolution ?? 0), 0.02 * Math.abs(givens.numbers.target ?? 0))

/** Standard uncertainty of one reading of an instrument, SI; NaN where its accuracy is not known. */
const uncertaintyAt = (reading: number, resolution: number, model: InstrumentModel | undefined): number => {
  const digit = resolution / Math.sqrt(6)
  if (!model) return digit
  if (model.gain === null || model.offset === null) return Number.NaN
  const linearity = (model.linearity ?? model.offset) / Math.SQRT2
  const { gain, offset, hysteresis, calibration } = model
  return Math.hypot(gain * reading, offset, linearity, hysteresis ?? 0, calibration ?? 0, digit)
}

/**
 * Adds `load_guard`: by how much each load reading must lie above a level to be there with 95 % confidence. What a
 * gauge makes sure belongs to the choice of rows and so must be known before they are chosen.
 */
export const prepare = (columns: Columns, _: Givens, instruments: Instruments): Columns => {
  const load = columns.load
  if (!load || columns.load_guard) return columns
  const values = load.values.map(
    (reading) => ONE_SIDED_95 * uncertaintyAt(reading, load.resolution, instruments.load),
  )
  return { ...columns, load_guard: { values, dim: load.dim, resolution: 0 } }
}
