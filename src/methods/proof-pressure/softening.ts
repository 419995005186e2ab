/**
 * Is a station softer in the second loading than in the first? Movement x₂ of the second loading is compared with x₁ of
 * the first step by step: on the line x₂ = α + S x₁ the slope S is the ratio of step compliances, whatever the law of
 * the skin (a membrane stiffens both times alike). What seats in the first loading and stays makes S smaller where it
 * seats, never larger. S is taken from every level to the top (from no load, and from where the skin has seated) and over
 * each single step; what counts is where it lies most surely above 1.
 */
import { normalQuantile, tQuantile } from '../../quantity/distribution.ts'
import type { Spread } from './scatter.ts'

/** Level of pressure that was read in both loadings: means of pressure and movement, and how many readings each. */
export type Pair = {
  readonly first: readonly number[]
  readonly second: readonly number[]
}

/** Pairs from `low` to `high`, both included. */
export type Span = { readonly low: number; readonly high: number }

export type Softening = Span & { readonly ratio: number; readonly u: number; readonly dof: number }

export type Inputs = {
  readonly pressure: ArrayLike<number>
  readonly movement: ArrayLike<number>
  /** Size of a digit of the movement and of the pressure. */
  readonly digit: number
  readonly pressureDigit: number
  readonly spread: Spread
  readonly pressureSpread: Spread
}

/** Bulges below this many digits show no softening of 30 % among the digits. */
export const FEWEST_DIGITS = 20
/** Risk of an alarm on a sound structure, all stations and spans together. */
const RISK = 0.01
/** Parts of it for the whole range, for the range from the first step up, and for all other spans together. */
const SHARES = [0.6, 0.2] as const

const over = (values: ArrayLike<number>, rows: readonly number[]): number =>
  rows.reduce((sum, row) => sum + (values[row] ?? Number.NaN), 0) / rows.length

/**
 * Standard uncertainty of a mean of n readings of a dial: a single reading is good to one digit (rectangular; common
 * practice, no source), or scatters more than that; below half a digit of scatter the digit does not average out.
 */
const readingOf = (digit: number, { s }: Spread, n: number): number =>
  s >= digit / 2
    ? Math.max(s, digit / Math.sqrt(3)) / Math.sqrt(n)
    : Math.sqrt((digit * digit) / 12 + (digit * digit) / (4 * n))

/** A scatter smaller than one digit's is not used, and so are its degrees of freedom. */
const dofOf = (digit: number, { s, dof }: Spread): number =>
  s > digit / Math.sqrt(3) ? dof : Number.POSITIVE_INFINITY

type Reading = { readonly x: number; readonly dial: number; readonly gauge: number }
type Point = { readonly first: Reading; readonly second: Reading }

/** Movement of both loadings at the very pressure of the first, and what dial and gauge make either uncertain by. */
const pointsOf = (inputs: Inputs, pairs: readonly Pair[]): Point[] => {
  const { pressure, movement, digit, pressureDigit, spread, pressureSpread } = inputs
  const p = pairs.map(({ first, second }) => [over(pressure, first), over(pressure, second)] as const)
  const x = pairs.map(({ first, second }) => [over(movement, first), over(movement, second)] as const)
  const slope = (k: number, loading: 0 | 1): number => {
    const [low, high] = [Math.max(0, k - 1), Math.min(pairs.length - 1, k + 1)]
    const [dx, dp] = [x, p].map((list) => (list[high]?.[loading] ?? 0) - (list[low]?.[loading] ?? 0))
    return dp ? (dx ?? 0) / dp : 0
  }
  return pairs.map(({ first, second }, k) => {
    const [x1 = Number.NaN, x2 = Number.NaN] = x[k] ?? []
    const [p1 = Number.NaN, p2 = Number.NaN] = p[k] ?? []
    const reading = (at: number, rows: readonly number[], loading: 0 | 1): Reading => ({
      x: at,
      dial: readingOf(digit, spread, rows.length),
      gauge: slope(k, loading) * readingOf(pressureDigit, pressureSpread, rows.length),
    })
    return { first: reading(x1, first, 0), second: reading(x2 - slope(k, 1) * (p2 - p1), second, 1) }
  })
}

/** Slope of x₂ on x₁ by least squares over a span, with the uncertainty of both carried over (JCGM 100, 5.1.2 and G.4.1). */
const ratioOver = (inputs: Inputs, points: readonly Point[], span: Span): Softening => {
  const own = points.slice(span.low, span.high + 1)
  const middle = own.reduce((sum, { first }) => sum + first.x, 0) / own.length
  const squares = own.reduce((sum, { first }) => sum + (first.x - middle) ** 2, 0)
  const ratio = own.reduce((sum, { first, second }) => sum + (first.x - middle) * second.x, 0) / squares
  const variance = (of: 'dial' | 'gauge') =>
    own.reduce(
      (sum, { first, second }) =>
        sum + ((first.x - middle) / squares) ** 2 * (second[of] ** 2 + (ratio * first[of]) ** 2),
      0,
    )
  const [dial, gauge] = [variance('dial'), variance('gauge')]
  const share =
    dial ** 2 / dofOf(inputs.digit, inputs.spread) +
    gauge ** 2 / dofOf(inputs.pressureDigit, inputs.pressureSpread)
  const dof = share > 0 ? Math.max(1, (dial + gauge) ** 2 / share) : Number.POSITIVE_INFINITY
  return { ...span, ratio, u: Math.sqrt(dial + gauge), dof }
}

/** The widest first; `pairs[0]` is the reading at no load. */
const spansOf = (count: number): Span[] => {
  const top = count - 1
  return [
    ...Array.from({ length: top - 1 }, (_, low) => ({ low, high: top })),
    ...Array.from({ length: top }, (_, low) => ({ low, high: low + 1 })),
  ]
}

/** One-sided factor at which span number k raises the alarm. */
const factorOf = (spans: number, k: number, dof: number, stations: number): number => {
  const rest = 1 - SHARES[0] - SHARES[1]
  const share = spans <= SHARES.length ? 1 / spans : (SHARES[k] ?? rest / (spans - SHARES.length))
  const p = 1 - (RISK * share) / stations
  return dof === Number.POSITIVE_INFINITY ? normalQuantile(p) : tQuantile(p, dof)
}

export const softeningOver = (inputs: Inputs, pairs: readonly Pair[], span: Span): Softening =>
  ratioOver(inputs, pointsOf(inputs, pairs), span)

/** The span over which the ratio lies most surely above 1; null where fewer than two levels were read twice. */
export const worstSpan = (inputs: Inputs, pairs: readonly Pair[], stations: number): Span | null => {
  if (pairs.length < 2) return null
  const spans = spansOf(pairs.length)
  const points = pointsOf(inputs, pairs)
  const low = spans.map((span, k) => {
    const { ratio, u, dof } = ratioOver(inputs, points, span)
    return ratio - factorOf(spans.length, k, dof, stations) * u
  })
  const best = low.map((value) => (Number.isFinite(value) ? value : Number.NEGATIVE_INFINITY))
  return spans[best.indexOf(Math.max(...best))] ?? null
}

/** True where the ratio of its span lies above 1 by more than chance among all stations and spans allows. */
export const isSofter = (found: Softening, pairs: number, stations: number): boolean => {
  const spans = spansOf(pairs)
  const k = spans.findIndex(({ low, high }) => low === found.low && high === found.high)
  return found.ratio - factorOf(spans.length, k, found.dof, stations) * found.u > 1
}
