/** What one dial says: bulge at the target, compliance, set, creep in the hold, and softening. */
import { fitLine } from '../../quantity/fit.ts'
import { FAST_ROWS } from '../blocks.ts'
import type { Columns, Givens } from '../method.ts'
import { type Bulging, type Channel, type Choice, softeningInputs } from './choice.ts'
import { movementOf, over, targetOf } from './readings.ts'
import { part, type Scatter, type Spread, times } from './scatter.ts'
import { type Softening, softeningOver } from './softening.ts'

export type Station = {
  readonly values: Readonly<Record<string, number>>
  /** Worked out when asked for: of estimates on moved readings only the values are wanted. */
  readonly scatter: Readonly<Record<string, () => Scatter>>
  readonly softening: Softening | null
}

/** A line over fewer readings than this shows its scatter poorly. */
const FEWEST_DOF = 5
/** Readings logged fast are not independent: however many, they count as 20 (as blocks do). */
const counted = (rows: number): number => (rows > FAST_ROWS ? 20 : rows)
const slower = (rows: number): number => Math.sqrt(counted(rows) / rows)

/** A peak that falls short of the target by more than this is not stretched to it. */
const SHORTFALL = 0.01

/** Bulge by a straight line between the level below the target and the one that was held. */
const bulgeOf = (
  columns: Columns,
  givens: Givens,
  { direction, suffix, spread }: Channel,
  { before, below, above }: Bulging,
  movement: Float64Array,
) => {
  const pressure = columns.pressure?.values ?? new Float64Array()
  const target = targetOf(givens)
  const [low, high] = [over(pressure, below), over(pressure, above)]
  const share = (target - low) / (high - low)
  const reached = high / target >= 1 - SHORTFALL
  const start = over(movement, before)
  const moved = (1 - share) * over(movement, below) + share * over(movement, above) - start
  const error = (name: string, weight: number, rows: readonly number[]): Scatter =>
    part(suffix, name, (direction * weight * spread.s) / Math.sqrt(counted(rows.length)), spread)
  // Without a step in between, the line starts at the readings before.
  const fromBefore = below === before ? -share : -1
  const scatter = (): Scatter => ({
    ...error('before', fromBefore, before),
    ...(below === before ? {} : error('below', 1 - share, below)),
    ...error('held', share, above),
  })
  return {
    value: reached ? direction * moved : Number.NaN,
    scatter,
    slope: (over(movement, above) - over(movement, below)) / (high - low),
  }
}

/** Movement from the first to the last reading of the hold, taken to equal pressure, by a straight line over time. */
const creepOf = (
  columns: Columns,
  { held, direction, suffix, spread }: Channel,
  { movement, slope, pressureSpread }: { movement: Float64Array; slope: number; pressureSpread: Spread },
) => {
  const pressure = columns.pressure?.values ?? new Float64Array()
  const time = held.map((row) => columns.time?.values[row] ?? Number.NaN)
  const duration = (time.at(-1) ?? 0) - (time[0] ?? 0)
  if (held.length < 3 || !(duration > 0)) return { value: Number.NaN, scatter: (): Scatter => ({}) }
  const stiff = Number.isFinite(slope) ? slope : 0
  const line = fitLine(
    time,
    held.map((row) => (movement[row] ?? Number.NaN) - stiff * (pressure[row] ?? Number.NaN)),
  )
  const lever = duration / Math.sqrt(line.sxx) / slower(held.length)
  // Few readings in the hold show less of the scatter than all that were read at one level together.
  const own: Spread =
    line.dof >= FEWEST_DOF
      ? { s: line.residual, dof: line.dof }
      : { s: Math.hypot(spread.s, stiff * pressureSpread.s), dof: spread.dof }
  return {
    value: direction * line.slope * duration,
    scatter: () => part(`${suffix}-hold`, 'creep', own.s * lever, own),
  }
}

export const estimateStation = (
  columns: Columns,
  givens: Givens,
  choice: Pick<Choice, 'pressureSpread'>,
  channel: Channel,
): Station => {
  const { before, after, direction, suffix, spread, span, pairs } = channel
  const pressure = columns.pressure?.values ?? new Float64Array()
  const movement = movementOf(columns, channel.name)
  const target = Math.abs(targetOf(givens))
  const bulge = bulgeOf(columns, givens, channel, channel, movement)
  const second = channel.again && bulgeOf(columns, givens, channel, channel.again, movement)
  const creep = creepOf(columns, channel, {
    movement,
    slope: bulge.slope,
    pressureSpread: choice.pressureSpread,
  })
  // Readings without load are compared at equal pressure.
  const residue = (over(pressure, after) - over(pressure, channel.zero)) * (bulge.slope || 0)
  const set = direction * (over(movement, after) - over(movement, channel.zero) - residue)
  const zeroName = channel.zero === before ? 'before' : 'zero'
  const softening = span ? softeningOver(softeningInputs(columns, channel, choice), pairs, span) : null
  const values: Record<string, number> = {
    bulge: bulge.value,
    compliance: bulge.value / target,
    set,
    creep: creep.value,
  }
  const scatter: Record<string, () => Scatter> = {
    bulge: bulge.scatter,
    compliance: () => times(bulge.scatter(), 1 / target),
    set: () => ({
      ...part(suffix, zeroName, (-direction * spread.s) / Math.sqrt(counted(channel.zero.length)), spread),
      ...part(suffix, 'after', (direction * spread.s) / Math.sqrt(counted(after.length)), spread),
    }),
    creep: creep.scatter,
  }
  if (second) {
    values.second_bulge = second.value
    // Rows of its own: what scatters in them does not in those of the first.
    scatter.second_bulge = () =>
      Object.fromEntries(Object.entries(second.scatter()).map(([key, one]) => [`${key}_again`, one]))
  }
  if (softening) {
    values.softening = softening.ratio
    const pool = `${suffix}-softening`
    const shape = Number.isFinite(softening.dof) ? 't' : 'normal'
    scatter.softening = () => ({ [pool]: { u: softening.u, dof: softening.dof, pool, shape } })
  }
  return { values, scatter, softening }
}
