/** Columns and givens → numbers. What rows they rest on was chosen by `select`. */
import type { Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { estimateMovement, type Movement, type Scatter } from './movement.ts'
import { at, holdOf } from './readings.ts'
import type { Choice } from './select.ts'

/** Time from the first to the last row of a hold; of steps the sum of the times that they were held. */
export const heldFor = (columns: Columns, choice: Choice, rows: { from: number; to: number }): number => {
  if (choice.timed === 'time') return at(columns.time, rows.to) - at(columns.time, rows.from)
  let sum = 0
  for (let row = rows.from; row <= rows.to; row += 1) sum += Math.max(0, at(columns.held, row) || 0)
  return sum
}

/**
 * The hold began between the reading before the first and the first, and ended between the last and the next:
 * two rectangular widths. Stopwatch times carry the resolution of the column only.
 */
const samplingScatter = (columns: Columns, choice: Choice): Scatter => {
  const { time } = columns
  const { held } = choice
  if (!time || !held) return {}
  const gap = (a: number, b: number) => Math.abs(at(time, b) - at(time, a)) || 0
  const width = Math.hypot(gap(held.from - 1, held.from), gap(held.to, held.to + 1))
  const u = width / Math.sqrt(12)
  return u > 0
    ? { sampling: { u, dof: Number.POSITIVE_INFINITY, pool: 'sampling', shape: 'rectangular' } }
    : {}
}

/**
 * Scatter of single load readings near the sustained peak, from successive differences (von Neumann 1941):
 * s² = Σ(x_{i+1} − x_i)²/(2(n − 1)). A load that creeps while it is held does not count as scatter. Degrees of
 * freedom 2(n − 1)/3, rounded down for safety. Fewer than three readings show no scatter.
 */
const loadScatter = (columns: Columns, choice: Choice): Scatter => {
  const rows = choice.held ?? choice.peak
  if (!rows || choice.timed === 'none') return {}
  const readings: number[] = []
  for (let row = rows.from; row <= rows.to; row += 1) {
    const reading = at(columns.load, row)
    if (!Number.isNaN(reading)) readings.push(reading)
  }
  if (readings.length < 3) return {}
  const squares = readings.slice(1).reduce((sum, x, i) => sum + (x - (readings[i] as number)) ** 2, 0)
  const u = Math.sqrt(squares / (2 * (readings.length - 1)))
  const dof = Math.max(1, Math.floor((2 * (readings.length - 1)) / 3))
  return u > 0 ? { load: { u, dof, pool: 'load', shape: 't' } } : {}
}

export const times = (scatter: Scatter, factor: number): Scatter =>
  Object.fromEntries(Object.entries(scatter).map(([key, part]) => [key, { ...part, u: part.u * factor }]))

/** Bare names for one station; suffixed names, and bare ones of the worst, for several. */
const gather = (
  stations: readonly Movement[],
  worst: Choice['worst'],
  values: Record<string, number>,
  scatter: Record<string, Scatter> | null,
): void => {
  const put = (name: string, from: Movement, measure: string) => {
    const value = from.values[measure]
    if (value === undefined || !Number.isFinite(value)) return
    values[name] = value
    if (scatter) scatter[name] = from.scatter()[measure] ?? {}
  }
  const [only, second] = stations
  const names =
    only && !second
      ? Object.keys(only.values)
      : new Set(stations.flatMap((station) => Object.keys(station.values)))
  for (const measure of names) {
    const chosen = stations[worst[measure] ?? 0]
    if (chosen) put(measure, chosen, measure)
    if (stations.length > 1) for (const one of stations) put(`${measure}_${one.suffix}`, one, measure)
  }
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
  valuesOnly = false,
): Result<Estimate, string> => {
  const choice = selection as Choice
  const target = Math.abs(givens.numbers.target ?? Number.NaN)
  if (!(target > 0))
    return { ok: false, error: 'no target load: give `target`, as a given or under `targets`' }
  if (columns.time?.values.some((t, row) => t < at(columns.time, row - 1)))
    return { ok: false, error: 'the time goes back from one row to the next, so no hold can be counted' }
  if (!columns.load) return { ok: false, error: 'no column `load`' }
  const { peak, held, peakHold, sign } = choice
  if (!peak && peakHold === null && choice.channels.every(({ before }) => before.length === 0))
    return { ok: false, error: 'no reading of the load lasts as long as the hold that is asked' }
  const values: Record<string, number> = {}
  const scatter: Record<string, Scatter> = {}
  if (peak) {
    values.sustained_peak = sign * at(columns.load, peak.lowest)
    values.peak_ratio = values.sustained_peak / target
    if (!valuesOnly) {
      scatter.sustained_peak = loadScatter(columns, choice)
      scatter.peak_ratio = times(scatter.sustained_peak, 1 / target)
    }
  }
  const sure = held ? heldFor(columns, choice, held) : 0
  const possible = choice.possible ? heldFor(columns, choice, choice.possible) : 0
  // Between the two the scale cannot tell whether the load was held as long as asked: then it is not known.
  if (choice.timed !== 'none' && choice.guarded && (sure >= holdOf(givens) || possible < holdOf(givens))) {
    values.hold_time = sure
    scatter.hold_time = samplingScatter(columns, choice)
  }
  if (peakHold !== null) values.peak_hold = sign * at(columns.load, peakHold)
  const stations = choice.channels.map((channel) => estimateMovement(columns, givens, peak, channel))
  gather(stations, choice.worst, values, valuesOnly ? null : scatter)
  if (valuesOnly) return { ok: true, value: { values, scatter, residual: {} } }
  const residual = Object.fromEntries(stations.map((one) => [one.channel, one.residual()]))
  return { ok: true, value: { values, scatter, residual } }
}
