/**
 * Straight lines by least squares, in two passes about the mean: raw sums lose the digits that the standard errors
 * are made of. Equations: GUM H.3. Results for fewer points than the fit needs are NaN.
 */
import { filled } from './loops.ts'
import { mean } from './statistics.ts'

export type Line = {
  readonly slope: number
  /** Value at x = 0. */
  readonly intercept: number
  /** Value at `xMean`, which is independent of the slope: the two are the orthogonal parts of the fit. */
  readonly atMean: number
  readonly xMean: number
  /** Standard uncertainties from the scatter; NaN where dof is 0. */
  readonly uSlope: number
  readonly uMean: number
  readonly uIntercept: number
  /** Covariance of slope and intercept. */
  readonly covariance: number
  /** Residual standard deviation, with `dof`. */
  readonly residual: number
  readonly dof: number
  readonly residuals: readonly number[]
  /** Sum of squares of x about its mean, weighted. */
  readonly sxx: number
}

/** Value of the line at x. */
export function lineAt(line: Line, x: number): number {
  return line.atMean + line.slope * (x - line.xMean)
}

/** Standard uncertainty of `lineAt`, from the scatter (GUM H.3.4, eq. H.15 about the mean). */
export function uncertaintyAt(line: Line, x: number): number {
  return Math.hypot(line.uMean, line.uSlope * (x - line.xMean))
}

/** Where the points of a line lie; worked out once where several lines are fitted over the same x. */
export type Abscissa = {
  readonly x: ArrayLike<number>
  readonly weights: ArrayLike<number> | undefined
  readonly xMean: number
  /** Sum of the weights: the number of points where all count alike. */
  readonly total: number
  readonly sxx: number
}

export function abscissaOf(x: ArrayLike<number>, weights?: ArrayLike<number>, n = x.length): Abscissa {
  const [xMean, total] = weightedMean(x, weights, n)
  let sxx = 0
  for (let i = 0; i < n; i++) {
    const dx = (x[i] as number) - xMean
    sxx += (weights ? (weights[i] as number) : 1) * dx * dx
  }
  return { x, weights, xMean, total, sxx }
}

/**
 * y = intercept + slope · x, all points alike or each with a weight 1/u² up to one common factor:
 * the scatter decides on the size of the uncertainties, the weights only on their proportions.
 */
export function fitLine(x: ArrayLike<number>, y: ArrayLike<number>, weights?: ArrayLike<number>): Line {
  return fitOver(abscissaOf(x, weights, Math.min(x.length, y.length)), y)
}

export type Straight = Pick<Line, 'slope' | 'intercept' | 'atMean'>

/** The line alone, without its scatter: all that estimates on moved readings ask for. */
export function straightOver({ x, weights, xMean, sxx }: Abscissa, y: ArrayLike<number>): Straight {
  const n = Math.min(x.length, y.length)
  const [yMean] = weightedMean(y, weights, n)
  let sxy = 0
  for (let i = 0; i < n; i++) {
    const weight = weights ? (weights[i] as number) : 1
    sxy += weight * ((x[i] as number) - xMean) * ((y[i] as number) - yMean)
  }
  // Points at one x have no slope.
  const slope = sxx > 0 ? sxy / sxx : Number.NaN
  return { slope, intercept: yMean - slope * xMean, atMean: yMean }
}

export function residualsOf({ x, xMean }: Abscissa, y: ArrayLike<number>, line: Straight): number[] {
  const n = Math.min(x.length, y.length)
  const residuals: number[] = []
  for (let i = 0; i < n; i++)
    residuals.push((y[i] as number) - line.atMean - line.slope * ((x[i] as number) - xMean))
  return residuals
}

/** `fitLine` over an abscissa that is worked out already. */
export function fitOver(abscissa: Abscissa, y: ArrayLike<number>): Line {
  const { weights, xMean, total, sxx } = abscissa
  const straight = straightOver(abscissa, y)
  const residuals = residualsOf(abscissa, y, straight)
  let squares = 0
  for (let i = 0; i < residuals.length; i++) {
    const e = residuals[i] as number
    squares += (weights ? (weights[i] as number) : 1) * e * e
  }
  const n = residuals.length
  const dof = n - 2
  const residual = dof > 0 ? Math.sqrt(squares / dof) : Number.NaN
  const uSlope = residual / Math.sqrt(sxx)
  const uMean = residual / Math.sqrt(total)
  return {
    ...straight,
    xMean,
    uSlope,
    uMean,
    uIntercept: Math.hypot(uMean, uSlope * xMean),
    covariance: -xMean * uSlope ** 2,
    residual,
    dof: Math.max(0, dof),
    residuals,
    sxx,
  }
}

/** Mean, and the sum of the weights. */
function weightedMean(
  values: ArrayLike<number>,
  weights: ArrayLike<number> | undefined,
  n: number,
): readonly [number, number] {
  let total = 0
  let sum = 0
  // Sums of differences from the first point: a time in milliseconds since 1970 keeps its digits.
  const first = values[0] ?? Number.NaN
  for (let i = 0; i < n; i++) {
    const weight = weights ? (weights[i] as number) : 1
    total += weight
    sum += weight * ((values[i] as number) - first)
  }
  return [first + sum / total, total]
}

export type Proportion = {
  readonly slope: number
  readonly uSlope: number
  readonly residual: number
  readonly dof: number
  readonly residuals: Float64Array
}

/** y = slope · x. */
export function fitThroughOrigin(x: ArrayLike<number>, y: ArrayLike<number>): Proportion {
  const n = Math.min(x.length, y.length)
  let [sxx, sxy] = [0, 0]
  for (let i = 0; i < n; i++) {
    const xi = x[i] ?? Number.NaN
    sxx += xi * xi
    sxy += xi * (y[i] ?? Number.NaN)
  }
  const slope = sxx > 0 ? sxy / sxx : Number.NaN
  const residuals = Float64Array.from(
    { length: n },
    (_, i) => (y[i] ?? Number.NaN) - slope * (x[i] ?? Number.NaN),
  )
  const dof = n - 1
  const residual = dof > 0 ? Math.sqrt(residuals.reduce((sum, e) => sum + e * e, 0) / dof) : Number.NaN
  return { slope, uSlope: residual / Math.sqrt(sxx), residual, dof: Math.max(0, dof), residuals }
}

/** Means of n equal runs of values; where they do not divide evenly, the first ones are one longer. */
export function blockMeans(values: ArrayLike<number>, n: number): Float64Array {
  const count = Math.min(n, values.length)
  const size = Math.floor(values.length / count)
  const longer = values.length % count
  let at = 0
  return filled(count, (i) => {
    const length = size + (i < longer ? 1 : 0)
    const from = at
    at += length
    return mean(filled(length, (j) => values[from + j] ?? Number.NaN))
  })
}
