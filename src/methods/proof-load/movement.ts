/** What one column of movement says: deflection under the load, set after it, and the stiffness before and after. */
import { keptWith, lazily } from '../../quantity/lazily.ts'
import type { Part } from '../../quantity/types.ts'
import type { Held } from '../hold.ts'
import type { Columns, Givens } from '../method.ts'
import { type CycleFit, fitCycle } from './cycles.ts'
import { at, meanOfRead, meanOver } from './readings.ts'
import type { Channel } from './select.ts'

export type Scatter = Readonly<Record<string, Part>>

export type Movement = {
  readonly channel: string
  readonly suffix: string
  readonly values: Readonly<Record<string, number>>
  /** Worked out when asked for: of estimates on moved readings only the values are wanted. */
  readonly scatter: () => Readonly<Record<string, Scatter>>
  /** Scatter of single readings; 0 where fewer than three show none. */
  readonly residual: () => number
  /** Degrees of freedom of the fits of both cycles. */
  readonly cycleDof: number
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

/** The rows of a hold, listed once: every estimate on moved readings asks for the same. */
const rowsOf = keptWith((held: Held): readonly number[] =>
  Array.from({ length: held.to - held.from + 1 }, (_, i) => held.from + i),
)

/** Whether the middle of the play is to be compared: cycles in both directions were read, and play is not ruled out. */
const middles = (channel: Channel, givens: Givens): boolean =>
  givens.words.play !== 'none' && channel.cycles?.before.length === 2

/** Pooled standard deviation of repeated zero readings about their own means; from three readings on. */
const zeroScatter = (groups: readonly (readonly number[])[]): Spread => {
  const centred = groups.flatMap((group) => group.map((value) => value - mean(group)))
  const dof = centred.length - groups.length
  if (dof < 2 || groups.every((group) => group.length < 3)) return { s: 0, dof: 0 }
  return { s: Math.sqrt(centred.reduce((sum, d) => sum + d * d, 0) / dof), dof }
}

const cycleScatter = (before: CycleFit, after: CycleFit): Spread => {
  const dof = before.dof + after.dof
  return dof > 0 ? { s: Math.sqrt((before.squares + after.squares) / dof), dof } : { s: 0, dof: 0 }
}

export const estimateMovement = (
  columns: Columns,
  givens: Givens,
  peak: Held | null,
  channel: Channel,
): Movement => {
  const { name, suffix, direction, cycles } = channel
  const movement = columns[name]?.values ?? new Float64Array()
  const load = columns.load?.values ?? new Float64Array()
  const pick = (rows: readonly number[]) => rows.map((row) => at(columns[name], row))
  const fits = cycles && {
    before: fitCycle(cycles.before, load, movement),
    after: fitCycle(cycles.after, load, movement),
  }
  const byMiddle = fits !== null && middles(channel, givens)
  const fitted = fits ? cycleScatter(fits.before, fits.after) : { s: 0, dof: 0 }

  const window = peak ? rowsOf(peak) : []
  const under = meanOfRead(movement, window)
  const before = meanOver(movement, channel.before)
  const start = byMiddle ? fits.before.middle : before
  const deflection = direction * (under - start)

  // Zero readings are compared at equal load, by the compliance from zero to the peak.
  const rest = meanOfRead(load, channel.before) || 0
  const compliance = (under - start) / (meanOfRead(load, window) - rest)
  const residue = (meanOfRead(load, channel.after) || 0) - rest
  const shift = byMiddle
    ? fits.after.middle - fits.before.middle
    : meanOver(movement, channel.after) - before - (Number.isFinite(compliance) ? compliance * residue : 0)
  const set = givens.words.play === 'present' && !byMiddle ? Number.NaN : direction * shift

  const values: Record<string, number> = {
    peak_deflection: deflection,
    permanent_set: set,
    recovery: 1 - set / deflection,
    ...(fits ? stiffnessValues(fits) : {}),
  }
  const zero = lazily(() => zeroScatter([pick(channel.before), pick(channel.after)]))
  const scatter = lazily(() => {
    // What is compared at equal load scatters by the readings of both, movement and load.
    const atEqualLoad = (rows: readonly number[]) =>
      Number.isFinite(compliance)
        ? rows.map((row) => at(columns[name], row) - compliance * (at(columns.load, row) || 0))
        : pick(rows)
    const level = byMiddle ? fitted : zeroScatter([atEqualLoad(channel.before), atEqualLoad(channel.after)])
    const held = pick(window).filter((value) => !Number.isNaN(value)).length
    return {
      ...shiftScatter(
        { channel, level, single: byMiddle ? fitted : zero(), set, deflection, held },
        byMiddle ? fits : null,
      ),
      ...(fits ? stiffnessScatter(fits, fitted, suffix, values) : {}),
    }
  })
  return {
    channel: name,
    suffix,
    values,
    scatter,
    residual: () => Math.max(zero().s, fitted.s),
    cycleDof: fitted.dof,
  }
}

type Spread = { readonly s: number; readonly dof: number }
type Fits = { readonly before: CycleFit; readonly after: CycleFit }

type Shift = {
  readonly channel: Channel
  /** Scatter of what is compared at equal load, and of single readings. */
  readonly level: Spread
  readonly single: Spread
  readonly set: number
  readonly deflection: number
  /** Number of readings under the load. */
  readonly held: number
}

/** Scatter of set, deflection and recovery; `fits` where the middle of the play is compared, null for zero readings. */
const shiftScatter = (
  { channel, level, single, set, deflection, held }: Shift,
  fits: Fits | null,
): Record<string, Scatter> => {
  if (!(level.s > 0 || single.s > 0)) return {}
  const { suffix, direction } = channel
  const pool = `${suffix}/${fits ? 'cycles' : 'zero'}`
  const partOf =
    ({ s, dof }: Spread) =>
    (by: number): Part => ({ u: s * by, dof, pool, shape: 't' })
  const starting = (part: (by: number) => Part): Record<string, Part> =>
    fits
      ? { before: part(fits.before.fromMeans), before_slope: part(fits.before.fromSlope) }
      : { before: part(1 / Math.sqrt(channel.before.length)) }
  const ending = (part: (by: number) => Part): Record<string, Part> =>
    fits
      ? { after: part(-fits.after.fromMeans), after_slope: part(-fits.after.fromSlope) }
      : { after: part(-1 / Math.sqrt(channel.after.length)) }
  const [ofLevel, ofSingle] = [partOf(level), partOf(single)]
  const underLoad = { held: ofSingle(-1 / Math.sqrt(held)) }
  const permanent = keyed(suffix, { ...starting(ofLevel), ...ending(ofLevel) }, -direction)
  const peak = keyed(suffix, { ...starting(ofSingle), ...underLoad }, -direction)
  return {
    permanent_set: permanent,
    peak_deflection: peak,
    recovery: combine(permanent, -1 / deflection, peak, set / deflection ** 2),
  }
}

/** Stiffness is load over movement: 1/slope, whatever the signs of the two scales. */
const stiffnessValues = (fits: Fits): Record<string, number> => {
  const of = (fit: CycleFit) => 1 / Math.abs(fit.slope)
  const [before, after] = [of(fits.before), of(fits.after)]
  return { stiffness_before: before, stiffness_after: after, stiffness_change: after / before - 1 }
}

const stiffnessScatter = (
  fits: Fits,
  { s, dof }: Spread,
  suffix: string,
  values: Readonly<Record<string, number>>,
): Record<string, Scatter> => {
  if (!(s > 0)) return {}
  const value = (name: string) => values[name] ?? Number.NaN
  const relative = (fit: CycleFit) => -s / Math.sqrt(fit.spread) / fit.slope
  const part = (u: number): Part => ({ u, dof, pool: `${suffix}/cycles`, shape: 't' })
  const ratio = value('stiffness_change') + 1
  const [a, b] = [relative(fits.before), relative(fits.after)]
  return {
    stiffness_before: { [`${suffix}/before_slope`]: part(value('stiffness_before') * a) },
    stiffness_after: { [`${suffix}/after_slope`]: part(value('stiffness_after') * b) },
    stiffness_change: {
      [`${suffix}/before_slope`]: part(-ratio * a),
      [`${suffix}/after_slope`]: part(ratio * b),
    },
  }
}

const keyed = (suffix: string, parts: Readonly<Record<string, Part>>, factor: number): Scatter =>
  Object.fromEntries(
    Object.entries(parts).map(([key, part]) => [`${suffix}/${key}`, { ...part, u: factor * part.u }]),
  )

const combine = (a: Scatter, byA: number, b: Scatter, byB: number): Scatter => {
  const sum: Record<string, Part> = {}
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const part = a[key] ?? b[key]
    if (part) sum[key] = { ...part, u: byA * (a[key]?.u ?? 0) + byB * (b[key]?.u ?? 0) }
  }
  return sum
}
