/** What one column of movement says: deflection under the load, set after it, and the stiffness before and after. */
import type { Part } from '../../quantity/types.ts'
import type { Held } from '../hold.ts'
import type { Columns, Givens } from '../method.ts'
import { type CycleFit, fitCycle } from './cycles.ts'
import { at } from './readings.ts'
import type { Channel } from './select.ts'

export type Scatter = Readonly<Record<string, Part>>

export type Movement = {
  readonly channel: string
  readonly suffix: string
  readonly values: Readonly<Record<string, number>>
  readonly scatter: Readonly<Record<string, Scatter>>
  /** Scatter of single readings; 0 where fewer than three show none. */
  readonly residual: number
  /** Degrees of freedom of the fits of both cycles. */
  readonly cycleDof: number
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length

/** Whether the middle of the play is to be compared: cycles in both directions were read, and play is not ruled out. */
const middles = (channel: Channel, givens: Givens): boolean =>
  givens.words.play !== 'none' && channel.cycles?.before.length === 2

/** Pooled standard deviation of repeated zero readings about their own means; from three readings on. */
const zeroScatter = (groups: readonly (readonly number[])[]): { s: number; dof: number } => {
  const centred = groups.flatMap((group) => group.map((value) => value - mean(group)))
  const dof = centred.length - groups.length
  if (dof < 2 || groups.every((group) => group.length < 3)) return { s: 0, dof: 0 }
  return { s: Math.sqrt(centred.reduce((sum, d) => sum + d * d, 0) / dof), dof }
}

const cycleScatter = (before: CycleFit, after: CycleFit): { s: number; dof: number } => {
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
  const loads = (rows: readonly number[]) =>
    rows.map((row) => at(columns.load, row)).filter((x) => !Number.isNaN(x))
  const [before, after] = [pick(channel.before), pick(channel.after)]
  const fits = cycles && {
    before: fitCycle(cycles.before, load, movement),
    after: fitCycle(cycles.after, load, movement),
  }
  const byMiddle = fits !== null && middles(channel, givens)
  const fitted = fits ? cycleScatter(fits.before, fits.after) : { s: 0, dof: 0 }
  const pool = `${suffix}/${byMiddle ? 'cycles' : 'zero'}`

  const window = peak ? Array.from({ length: peak.to - peak.from + 1 }, (_, i) => peak.from + i) : []
  const under = pick(window).filter((value) => !Number.isNaN(value))
  const start = byMiddle ? fits.before.middle : mean(before)
  const deflection = direction * (mean(under) - start)

  // Zero readings are compared at equal load, by the compliance from zero to the peak.
  const rest = mean(loads(channel.before)) || 0
  const compliance = (mean(under) - start) / (mean(loads(window)) - rest)
  const residue = (mean(loads(channel.after)) || 0) - rest
  const shift = byMiddle
    ? fits.after.middle - fits.before.middle
    : mean(after) - mean(before) - (Number.isFinite(compliance) ? compliance * residue : 0)
  const set = givens.words.play === 'present' && !byMiddle ? Number.NaN : direction * shift

  // What is compared at equal load scatters by the readings of both, movement and load.
  const atEqualLoad = (rows: readonly number[]) =>
    Number.isFinite(compliance)
      ? rows.map((row) => at(columns[name], row) - compliance * (at(columns.load, row) || 0))
      : pick(rows)
  const zero = zeroScatter([before, after])
  const level = byMiddle ? fitted : zeroScatter([atEqualLoad(channel.before), atEqualLoad(channel.after)])
  const single = byMiddle ? fitted : zero
  const partOf =
    ({ s, dof }: { readonly s: number; readonly dof: number }) =>
    (by: number): Part => ({ u: s * by, dof, pool, shape: 't' })
  const starting = (part: (by: number) => Part): Record<string, Part> =>
    byMiddle
      ? { before: part(fits.before.fromMeans), before_slope: part(fits.before.fromSlope) }
      : { before: part(1 / Math.sqrt(before.length)) }
  const ending = (part: (by: number) => Part): Record<string, Part> =>
    byMiddle
      ? { after: part(-fits.after.fromMeans), after_slope: part(-fits.after.fromSlope) }
      : { after: part(-1 / Math.sqrt(after.length)) }
  const scatter: Record<string, Scatter> = {}
  if (level.s > 0 || single.s > 0) {
    const [ofLevel, ofSingle] = [partOf(level), partOf(single)]
    const held = { held: ofSingle(-1 / Math.sqrt(under.length)) }
    scatter.permanent_set = keyed(suffix, { ...starting(ofLevel), ...ending(ofLevel) }, -direction)
    scatter.peak_deflection = keyed(suffix, { ...starting(ofSingle), ...held }, -direction)
    scatter.recovery = combine(
      scatter.permanent_set,
      -1 / deflection,
      scatter.peak_deflection,
      set / deflection ** 2,
    )
  }
  const values: Record<string, number> = {
    peak_deflection: deflection,
    permanent_set: set,
    recovery: 1 - set / deflection,
  }
  if (fits) stiffness(fits, fitted, suffix, values, scatter)
  return {
    channel: name,
    suffix,
    values,
    scatter,
    residual: Math.max(zero.s, fitted.s),
    cycleDof: fitted.dof,
  }
}

/** Stiffness is load over movement: 1/slope, whatever the signs of the two scales. */
const stiffness = (
  fits: { readonly before: CycleFit; readonly after: CycleFit },
  { s, dof }: { readonly s: number; readonly dof: number },
  suffix: string,
  values: Record<string, number>,
  scatter: Record<string, Scatter>,
): void => {
  const of = (fit: CycleFit) => 1 / Math.abs(fit.slope)
  values.stiffness_before = of(fits.before)
  values.stiffness_after = of(fits.after)
  values.stiffness_change = values.stiffness_after / values.stiffness_before - 1
  if (!(s > 0)) return
  const relative = (fit: CycleFit) => -s / Math.sqrt(fit.spread) / fit.slope
  const part = (u: number): Part => ({ u, dof, pool: `${suffix}/cycles`, shape: 't' })
  const ratio = values.stiffness_change + 1
  const [a, b] = [relative(fits.before), relative(fits.after)]
  scatter.stiffness_before = { [`${suffix}/before_slope`]: part(values.stiffness_before * a) }
  scatter.stiffness_after = { [`${suffix}/after_slope`]: part(values.stiffness_after * b) }
  scatter.stiffness_change = {
    [`${suffix}/before_slope`]: part(-ratio * a),
    [`${suffix}/after_slope`]: part(ratio * b),
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
