/**
 * Straight lines of deflection on load, one a leg, and results made from them.
 *
 * Each line brings two orthogonal parts, its mean and its slope, in units of the pooled scatter s of all legs; so
 * whatever is computed from several lines carries the right correlation.
 */
import { type Abscissa, abscissaOf, residualsOf, straightOver } from '../../quantity/fit.ts'
import { lazily } from '../../quantity/lazily.ts'
import { mean } from '../../quantity/statistics.ts'
import type { Part } from '../../quantity/types.ts'
import type { Phase } from './branches.ts'

/** A branch on one side of zero load, in one cycle; each point is the mean of its rows (one row, unless logged fast). */
export type Leg = {
  /** Name of its sources of scatter, one of its own: `positive-loading-1`. */
  readonly key: string
  readonly side: 1 | -1
  readonly phase: Phase
  readonly cycle: number
  readonly points: readonly (readonly number[])[]
}

export type Line = Leg & {
  readonly loads: readonly number[]
  readonly meanLoad: number
  readonly meanMotion: number
  readonly slope: number
  readonly sxx: number
  readonly residuals: readonly number[]
}

/**
 * A value with its dependence on the unit scatter of independent sources. The parts are worked out only when asked
 * for: of the many estimates on moved readings only the values are wanted.
 */
export type Fitted = { readonly value: number; readonly parts: () => Readonly<Record<string, number>> }

/** Means of the rows of each point. */
const averages = (points: Leg['points'], values: Float64Array): number[] =>
  points.map((rows) => {
    if (rows.length === 1) return values[rows[0] as number] as number
    let sum = 0
    for (const row of rows) sum += values[row] as number
    return sum / rows.length
  })

/** Legs with their loads: what several lines over the same loads share. */
export type Loaded = { readonly leg: Leg; readonly loads: readonly number[]; readonly abscissa: Abscissa }

/** The legs that lie at different loads. */
export const loadedLegs = (legs: readonly Leg[], load: Float64Array): Loaded[] =>
  legs
    .map((leg) => {
      const loads = averages(leg.points, load)
      return { leg, loads, abscissa: abscissaOf(loads) }
    })
    .filter(({ abscissa }) => abscissa.sxx > 0)

const lineOf = ({ leg, loads, abscissa }: Loaded, motion: Float64Array): Line => {
  const moved = averages(leg.points, motion)
  const straight = straightOver(abscissa, moved)
  const { key, side, phase, cycle, points } = leg
  return {
    key,
    side,
    phase,
    cycle,
    points,
    loads,
    meanLoad: abscissa.xMean,
    meanMotion: straight.atMean,
    slope: straight.slope,
    sxx: abscissa.sxx,
    residuals: residualsOf(abscissa, moved, straight),
  }
}

export const linesOver = (legs: readonly Loaded[], motion: Float64Array): Line[] =>
  legs.map((leg) => lineOf(leg, motion))

/** What a shared slope is made of. */
type Slope = Pick<Line, 'key' | 'slope' | 'sxx'>

/** The slopes of the lines alone. */
export const slopesOver = (legs: readonly Loaded[], motion: Float64Array): Slope[] =>
  legs.map(({ leg, abscissa }) => ({
    key: leg.key,
    slope: straightOver(abscissa, averages(leg.points, motion)).slope,
    sxx: abscissa.sxx,
  }))

export const linesOf = (legs: readonly Leg[], load: Float64Array, motion: Float64Array): Line[] =>
  linesOver(loadedLegs(legs, load), motion)

/** First-order combination: `value` moves by `weight` per unit of each term. */
export const combine = (
  value: number,
  terms: () => readonly (readonly [weight: number, of: Fitted])[],
): Fitted => ({
  value,
  parts: lazily(() => {
    const parts: Record<string, number> = {}
    for (const [weight, of] of terms()) {
      const own = of.parts()
      for (const key in own) parts[key] = (parts[key] ?? 0) + weight * (own[key] as number)
    }
    return parts
  }),
})

/** One independent source of unit scatter times `weight`. */
const source = (key: string, weight: number): Fitted => ({ value: 0, parts: () => ({ [key]: weight }) })

export const slopeOf = (line: Slope): Fitted => ({
  value: line.slope,
  parts: () => ({ [`${line.key}/slope`]: 1 / Math.sqrt(line.sxx) }),
})

/** The line at one load. */
export const lineAt = (line: Line, load: number): Fitted =>
  combine(line.meanMotion + line.slope * (load - line.meanLoad), () => [
    [1, source(`${line.key}/mean`, 1 / Math.sqrt(line.loads.length))],
    [load - line.meanLoad, slopeOf(line)],
  ])

export const average = (all: readonly Fitted[]): Fitted =>
  combine(mean(all.map((each) => each.value)), () => all.map((each) => [1 / all.length, each]))

/** The slope that the lines share, by least squares with an intercept each. */
export const sharedSlope = (lines: readonly Slope[]): Fitted => {
  const total = lines.reduce((sum, line) => sum + line.sxx, 0)
  const value = lines.reduce((sum, line) => sum + (line.sxx / total) * line.slope, 0)
  return combine(value, () => lines.map((line) => [line.sxx / total, slopeOf(line)]))
}

export type Scatter = { readonly s: number; readonly dof: number }

/** Scatter about all lines together, and its degrees of freedom; 0 and 0 where no line has three points. */
export const pooledScatter = (lines: readonly Line[]): Scatter => {
  const dof = lines.reduce((sum, line) => sum + Math.max(0, line.loads.length - 2), 0)
  const squares = lines.reduce((sum, line) => sum + line.residuals.reduce((part, e) => part + e * e, 0), 0)
  return { s: dof > 0 ? Math.sqrt(squares / dof) : 0, dof }
}

/** Scatter of single rows about the lines: what decides whether resolution averages out. */
export const rowScatter = (lines: readonly Line[], load: Float64Array, motion: Float64Array): number => {
  let squares = 0
  let dof = 0
  for (const { points, meanMotion, meanLoad, slope } of lines) {
    let count = 0
    for (const rows of points) {
      count += rows.length
      for (const row of rows) {
        const expected = meanMotion + slope * ((load[row] as number) - meanLoad)
        squares += ((motion[row] as number) - expected) ** 2
      }
    }
    dof += Math.max(0, count - 2)
  }
  return dof > 0 ? Math.sqrt(squares / dof) : 0
}

/** Parts as the engine takes them: signed standard uncertainties that share one pool of degrees of freedom. */
export const toParts = (fitted: Fitted, { s, dof }: Scatter, pool: string): Readonly<Record<string, Part>> =>
  dof === 0
    ? {}
    : Object.fromEntries(
        Object.entries(fitted.parts()).map(([key, weight]) => [
          `${pool}/${key}`,
          { u: weight * s, dof, pool, shape: 't' as const },
        ]),
      )

/** Bend of the lines of one side: coefficient of load² with each line's own mean and slope taken out. */
export const bendOf = (lines: readonly Line[], side: 1 | -1): { fitted: Fitted; squares: number } | null => {
  let qq = 0
  let qy = 0
  for (const line of lines) {
    const own = line.loads.map((load) => (load - line.meanLoad) ** 2)
    const level = mean(own)
    const tilt =
      own.reduce((sum, q, i) => sum + q * ((line.loads[i] as number) - line.meanLoad), 0) / line.sxx
    line.residuals.forEach((residual, i) => {
      const q = (own[i] as number) - level - tilt * ((line.loads[i] as number) - line.meanLoad)
      qq += q * q
      qy += q * residual * side
    })
  }
  if (!(qq > 1e-18 * lines.reduce((sum, line) => sum + line.sxx * line.sxx, 0))) return null
  const value = qy / qq
  const key = `bend-${side > 0 ? 'positive' : 'negative'}`
  return { fitted: { value, parts: () => ({ [key]: 1 / Math.sqrt(qq) }) }, squares: value * value * qq }
}
