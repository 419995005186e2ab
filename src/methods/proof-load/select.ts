/** Which rows carry what: chosen once from the readings as they are, and held fixed when they are perturbed. */
import { type Held, longestHold, stepsAsReadings, sustainedPeak } from '../hold.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { type Cycles, cyclesOf } from './cycles.ts'
import { channelsOf, suffixOf } from './describe.ts'
import { estimateMovement } from './movement.ts'
import { at, bandOf, holdOf, levelOf, liveRows, phaseOf, signOf } from './readings.ts'

/** One column of movement: the rows with the article unloaded before and after, and its cycles. */
export type Channel = {
  readonly name: string
  readonly suffix: string
  /** Sign of the movement under the load. */
  readonly direction: 1 | -1
  readonly before: readonly number[]
  readonly after: readonly number[]
  readonly cycles: Cycles | null
}

export type Choice = Selection & {
  readonly sign: 1 | -1
  /** How the hold was timed; `none`: nothing shows how long a load was held. */
  readonly timed: 'time' | 'held' | 'none'
  /** Rows of the sustained peak. */
  readonly peak: Held | null
  /** Rows at the target with 95 % confidence; null also where the accuracy of the scale is not known. */
  readonly held: Held | null
  /** Rows that may be at the target, as far as the scale can tell. */
  readonly possible: Held | null
  readonly guarded: boolean
  readonly peakHold: number | null
  readonly channels: readonly Channel[]
  /** For each measure of movement, which station is the worst. */
  readonly worst: Readonly<Record<string, number>>
}

/** Rows for a clock; steps with their own hold time are two readings each. */
const stepRows = (held: Held | null): Held | null =>
  held && { from: held.from >> 1, to: held.to >> 1, lowest: held.lowest >> 1 }

/** A load by steps without any time: the highest step that was read. */
const highestStep = (values: Float64Array): Held | null => {
  const row = values.reduce(
    (best, value, i) => (value > (values[best] ?? Number.NaN) ? i : best),
    firstOf(values),
  )
  return row < 0 ? null : { from: row, to: row, lowest: row }
}
const firstOf = (values: Float64Array): number => values.findIndex((value) => !Number.isNaN(value))

/** Sustained peak and longest hold at the level, for a load in the direction of the target (NaN: no live reading). */
export const holdRows = (
  columns: Columns,
  givens: Givens,
  values: Float64Array,
  level: (row: number) => number,
): Pick<Choice, 'timed' | 'peak' | 'held'> => {
  const hold = holdOf(givens)
  const maxGap = givens.numbers.max_gap
  if (columns.time) {
    const input = { time: columns.time.values, values, maxGap, hold }
    return { timed: 'time', peak: sustainedPeak(input), held: longestHold(input, level) }
  }
  if (columns.held) {
    const input = { ...stepsAsReadings(columns.held.values, values), hold }
    const held = longestHold(input, (reading) => level(reading >> 1))
    return { timed: 'held', peak: stepRows(sustainedPeak(input)), held: stepRows(held) }
  }
  return { timed: 'none', peak: highestStep(values), held: null }
}

/** Load in the direction of the target; NaN where no live reading stands. */
export const loadAlong = (columns: Columns, givens: Givens): Float64Array => {
  const live = new Set(liveRows(columns, givens))
  const sign = signOf(givens)
  return Float64Array.from(columns.load?.values ?? [], (value, row) =>
    live.has(row) ? sign * value : Number.NaN,
  )
}

/** Rows with the article unloaded, before the first and after the last loaded row; or as `phase` says. */
const unloadedRows = (columns: Columns, givens: Givens): { before: number[]; after: number[] } => {
  const count = columns.load?.values.length ?? 0
  const rows = Array.from({ length: count }, (_, row) => row)
  const band = bandOf(columns, givens)
  const size = (row: number) => Math.abs(at(columns.load, row))
  const named = (phase: string) =>
    rows.filter((row) => phaseOf(columns, row) === phase && !(size(row) > band))
  const loaded = rows.filter((row) => phaseOf(columns, row) === 'peak' || size(row) > band)
  const first = loaded[0] ?? count
  const last = loaded[loaded.length - 1] ?? count
  const [before, after] = [named('before'), named('after')]
  return {
    before: before.length > 0 ? before : rows.filter((row) => row < first && size(row) <= band),
    after: after.length > 0 ? after : rows.filter((row) => row > last && size(row) <= band),
  }
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, one) => sum + one, 0) / values.length

const channelOf = (
  columns: Columns,
  givens: Givens,
  name: string,
  unloaded: { before: number[]; after: number[] },
  peak: Held | null,
): Channel => {
  const column = columns[name]
  const read = (rows: readonly number[]) => rows.filter((row) => !Number.isNaN(at(column, row)))
  const before = read(unloaded.before)
  const start = meanOf(before.map((row) => at(column, row)))
  const moved = peak ? at(column, peak.lowest) - (Number.isNaN(start) ? 0 : start) : Number.NaN
  return {
    name,
    suffix: suffixOf(name),
    direction: moved < 0 ? -1 : 1,
    before,
    after: read(unloaded.after),
    cycles: cyclesOf(columns, givens, name),
  }
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const values = loadAlong(columns, givens)
  const guard = columns.load_guard
  const level = levelOf(givens)
  const sure = (row: number) => level + (guard ? at(guard, row) : 0)
  const rows = holdRows(columns, givens, values, sure)
  const maybe = holdRows(columns, givens, values, (row) => 2 * level - sure(row))
  const unloaded = unloadedRows(columns, givens)
  const peakHold = Array.from(columns.load?.values ?? []).reduce<number | null>((best, value, row) => {
    const counts = phaseOf(columns, row) === 'peak' || givens.fields.scale === 'peak-hold'
    if (!counts || Number.isNaN(value)) return best
    return best === null || signOf(givens) * value > signOf(givens) * at(columns.load, best) ? row : best
  }, null)
  const channels = channelsOf(Object.keys(columns)).map((name) =>
    channelOf(columns, givens, name, unloaded, rows.peak),
  )
  return {
    ...rows,
    possible: maybe.held,
    sign: signOf(givens),
    guarded: !guard?.values.some((value, row) => Number.isNaN(value) && !Number.isNaN(values[row] as number)),
    peakHold,
    channels,
    worst: worstOf(channels.map((channel) => estimateMovement(columns, givens, rows.peak, channel).values)),
  }
}

/** Largest movement and set, smallest recovery; stiffness where it lost most. */
const worstOf = (stations: readonly Readonly<Record<string, number>>[]): Record<string, number> => {
  const lowest = (of: (values: Readonly<Record<string, number>>) => number | undefined) => {
    const sizes = stations
      .map((values) => of(values) ?? Number.NaN)
      .map((x) => (Number.isNaN(x) ? Infinity : x))
    return Math.max(0, sizes.indexOf(Math.min(...sizes)))
  }
  const lost = lowest((values) => values.stiffness_change)
  return {
    peak_deflection: lowest((values) => -(values.peak_deflection ?? Number.NaN)),
    permanent_set: lowest((values) => -(values.permanent_set ?? Number.NaN)),
    recovery: lowest((values) => values.recovery),
    stiffness_before: lost,
    stiffness_after: lost,
    stiffness_change: lost,
  }
}
