/** Least squares in any number of coefficients, by Householder reflections (no normal equations, no lost digits). */

import { filled } from './loops.ts'

export type LinearFit = {
  readonly coefficients: Float64Array
  /**
   * `factor[j][k]`: what orthogonal part k of the scatter contributes to coefficient j, as a standard uncertainty.
   * The p parts share one pool of `dof`; covariance of i and j is Σ factor[i][k] · factor[j][k]. NaN where dof is 0.
   */
  readonly factor: readonly Float64Array[]
  readonly uncertainties: Float64Array
  readonly residual: number
  readonly dof: number
  readonly residuals: Float64Array
}

/** A column that is, but for rounding, a combination of those before it leaves less than this of its length. */
const DEPENDENT = 1e-12

/**
 * y = Σ coefficients[j] · columns[j]. Null where there are fewer points than coefficients, or where the columns
 * do not tell the coefficients apart.
 */
export function fitLinear(columns: readonly ArrayLike<number>[], y: ArrayLike<number>): LinearFit | null {
  const [n, p] = [y.length, columns.length]
  if (n < p || p === 0) return null
  // Columns of one length: a design in metres and one in millimetres then lose the same digits.
  const lengths = columns.map((column) => norm(column, 0, n))
  const q = columns.map((column, j) => {
    const length = lengths[j] || 1
    return filled(n, (i) => (column[i] ?? 0) / length)
  })
  const right = filled(n, (i) => y[i] as number)
  const diagonal = new Float64Array(p)
  for (let k = 0; k < p; k++) {
    const column = q[k]
    if (!column) return null
    const size = norm(column, k)
    if (!(size > DEPENDENT)) return null
    diagonal[k] = (column[k] ?? 0) > 0 ? -size : size
    // The reflector, scaled so that its first element is 1 + |…|: no cancellation.
    column[k] = (column[k] ?? 0) - (diagonal[k] ?? 0)
    const square = norm(column, k) ** 2
    for (const target of [...q.slice(k + 1), right]) reflect(column, target, k, square)
  }
  const upper = (i: number, j: number) => (i === j ? (diagonal[i] ?? 0) : (q[j]?.[i] ?? 0))
  const solve = (side: ArrayLike<number>) => backSubstitute(upper, side, p)

  const coefficients = solve(right).map((value, j) => value / (lengths[j] ?? 1))
  const residuals = filled(n, (i) => {
    let rest = y[i] ?? Number.NaN
    for (let j = 0; j < p; j++) rest -= (coefficients[j] ?? 0) * (columns[j]?.[i] ?? 0)
    return rest
  })
  const dof = n - p
  const residual = dof > 0 ? norm(right, p) / Math.sqrt(dof) : Number.NaN
  // Column k of R⁻¹ times the residual is the k-th orthogonal part.
  const parts = lengths.map((_, k) => solve(filled(p, (i) => (i === k ? 1 : 0))))
  const factor = lengths.map((length, j) => filled(p, (k) => ((parts[k]?.[j] ?? 0) * residual) / length))
  const uncertainties = filled(p, (j) => norm(factor[j] ?? []))
  return { coefficients, factor, uncertainties, residual, dof, residuals }
}

function norm(values: ArrayLike<number>, from = 0, to = values.length): number {
  let sum = 0
  for (let i = from; i < to; i++) sum += (values[i] ?? Number.NaN) ** 2
  return Math.sqrt(sum)
}

function reflect(reflector: Float64Array, target: Float64Array, from: number, square: number) {
  let dot = 0
  for (let i = from; i < target.length; i++) dot += (reflector[i] ?? 0) * (target[i] ?? 0)
  const times = (2 * dot) / square
  for (let i = from; i < target.length; i++) target[i] = (target[i] ?? 0) - times * (reflector[i] ?? 0)
}

function backSubstitute(
  upper: (i: number, j: number) => number,
  side: ArrayLike<number>,
  p: number,
): Float64Array {
  const solution = new Float64Array(p)
  for (let i = p - 1; i >= 0; i--) {
    let rest = side[i] ?? 0
    for (let j = i + 1; j < p; j++) rest -= upper(i, j) * (solution[j] ?? 0)
    solution[i] = rest / upper(i, i)
  }
  return solution
}
