/** Are successive residuals alike? Then there are fewer independent readings than rows. */
import { tCdf } from './distribution.ts'

export type VonNeumann = {
  /** Mean square of successive differences over the variance: about 2 for independent values, smaller where neighbours are alike. */
  readonly ratio: number
  /** Probability of so small a ratio among independent normal values. */
  readonly p: number
  /** p below 1 %. */
  readonly correlated: boolean
}

/**
 * von Neumann's ratio δ²/s², with δ² over n − 1 and s² over n (Annals of Mathematical Statistics 12, 1941, 367).
 * C = 1 − (n − 1)/(2n) · ratio is symmetric about 0 with variance (n − 2)/(n² − 1) (Young, same volume, 293); its
 * distribution is taken as the symmetric beta of that variance, which is Student's t in C·√(ν/(1 − C²)).
 */
export function vonNeumann(residuals: ArrayLike<number>): VonNeumann {
  const n = residuals.length
  const values = Array.from(residuals)
  const middle = values.reduce((sum, value) => sum + value, 0) / n
  const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0)
  const differences = values
    .slice(1)
    .reduce((sum, value, i) => sum + (value - (values[i] ?? Number.NaN)) ** 2, 0)
  const ratio = differences / (n - 1) / (squares / n)
  // Too few values, or all equal: nothing can be said.
  if (n < 4 || !(squares > 0)) return { ratio: Number.NaN, p: Number.NaN, correlated: false }
  const c = 1 - differences / (2 * squares)
  const dof = (n * n - 1) / (n - 2) - 1
  const p = c >= 1 ? 0 : c <= -1 ? 1 : tCdf(-c * Math.sqrt(dof / (1 - c * c)), dof)
  return { ratio, p, correlated: p < 0.01 }
}
