/**
 * Non-linear least squares after Levenberg and Marquardt, with analytic derivatives.
 * K. Levenberg, Quart. Appl. Math. 2 (1944) 164; D. W. Marquardt, J. SIAM 11 (1963) 431.
 */

/** Value of the model at x; writes its derivatives by the parameters into `slopes`. */
export type Model = (x: number, parameters: Float64Array, slopes: Float64Array) => number

export type Fit = {
  readonly parameters: Float64Array
  /** Cholesky factor L of (JᵀJ)⁻¹ = L·Lᵀ: column k times s is orthogonal part k of the scatter. */
  readonly factor: readonly Float64Array[]
  /** Sum of squared residuals. */
  readonly squares: number
  readonly dof: number
  readonly residuals: Float64Array
}

const MOST_STEPS = 200

/** The lower Cholesky factor; null where the matrix is not positive definite. */
const cholesky = (matrix: readonly Float64Array[]): Float64Array[] | null => {
  const lower = matrix.map((row) => new Float64Array(row.length))
  const get = (rows: readonly Float64Array[], i: number, j: number) => rows[i]?.[j] ?? 0
  for (let i = 0; i < matrix.length; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = get(matrix, i, j)
      for (let k = 0; k < j; k += 1) sum -= get(lower, i, k) * get(lower, j, k)
      if (i === j && !(sum > 1e-14)) return null
      const row = lower[i] as Float64Array
      row[j] = i === j ? Math.sqrt(sum) : sum / get(lower, j, j)
    }
  }
  return lower
}

const solve = (lower: readonly Float64Array[], right: Float64Array): Float64Array => {
  const n = right.length
  const x = Float64Array.from(right)
  const at = (i: number, j: number) => lower[i]?.[j] ?? 0
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) x[i] = (x[i] as number) - at(i, k) * (x[k] as number)
    x[i] = (x[i] as number) / at(i, i)
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) x[i] = (x[i] as number) - at(k, i) * (x[k] as number)
    x[i] = (x[i] as number) / at(i, i)
  }
  return x
}

type Normal = { matrix: Float64Array[]; right: Float64Array; squares: number; residuals: Float64Array }

const normalEquations = (
  model: Model,
  x: Float64Array,
  y: Float64Array,
  parameters: Float64Array,
): Normal => {
  const p = parameters.length
  const packed = new Float64Array((p * (p + 1)) / 2)
  const right = new Float64Array(p)
  const slopes = new Float64Array(p)
  const residuals = new Float64Array(x.length)
  let squares = 0
  for (let i = 0; i < x.length; i += 1) {
    const rest = (y[i] as number) - model(x[i] as number, parameters, slopes)
    residuals[i] = rest
    squares += rest * rest
    for (let j = 0, at = 0; j < p; j += 1) {
      const slope = slopes[j] as number
      right[j] = (right[j] as number) + slope * rest
      for (let k = 0; k <= j; k += 1, at += 1) {
        packed[at] = (packed[at] as number) + slope * (slopes[k] as number)
      }
    }
  }
  const entry = (i: number, j: number) =>
    packed[i >= j ? (i * (i + 1)) / 2 + j : (j * (j + 1)) / 2 + i] as number
  const matrix = Array.from({ length: p }, (_, i) => Float64Array.from({ length: p }, (_u, j) => entry(i, j)))
  return { matrix, right, squares, residuals }
}

/** The matrix with ones on its diagonal, and what each parameter is to be divided by. */
const scaled = (matrix: readonly Float64Array[], damping: number) => {
  const size = matrix.map((row, i) => Math.sqrt(row[i] as number))
  const unit = matrix.map((row, i) =>
    row.map((value, j) => (i === j ? 1 + damping : value / ((size[i] as number) * (size[j] as number)))),
  )
  return { size, lower: size.every((each) => each > 0) ? cholesky(unit) : null }
}

/** Orthogonal parts: (JᵀJ)⁻¹ from its scaled inverse, factored. */
const factorOf = (matrix: readonly Float64Array[]): Float64Array[] | null => {
  const { size, lower } = scaled(matrix, 0)
  if (!lower) return null
  const p = matrix.length
  const columns = size.map((_, k) =>
    solve(
      lower,
      Float64Array.from({ length: p }, (_u, i) => (i === k ? 1 : 0)),
    ),
  )
  const inverse = size.map((_, i) => Float64Array.from(columns, (column) => column[i] as number))
  return cholesky(inverse)?.map((row, i) => row.map((value) => value / (size[i] as number))) ?? null
}

/**
 * Fits y to the model from a start nearby. Null where there are no more points than parameters, where the points do
 * not tell the parameters apart, or where it does not settle.
 */
export const leastSquares = (
  model: Model,
  x: Float64Array,
  y: Float64Array,
  start: Float64Array,
): Fit | null => {
  const p = start.length
  if (x.length <= p) return null
  const total = y.reduce((sum, value) => sum + value * value, 0)
  let parameters = start
  let normal = normalEquations(model, x, y, parameters)
  let damping = 0
  let settled = false
  for (let step = 0; step < MOST_STEPS && !settled; step += 1) {
    const { size, lower } = scaled(normal.matrix, damping)
    if (!lower || !Number.isFinite(normal.squares)) return null
    const move = solve(
      lower,
      normal.right.map((value, j) => value / (size[j] as number)),
    )
    const gain = move.reduce((sum, m, j) => sum + (m * (normal.right[j] as number)) / (size[j] as number), 0)
    const next = parameters.map((value, j) => value + (move[j] as number) / (size[j] as number))
    const tried = normalEquations(model, x, y, next)
    // What is promised is far below what any reading could show: the quadratic end of the descent is past.
    const small = gain <= 1e-14 * normal.squares + 1e-28 * total
    if (tried.squares <= normal.squares || small) {
      settled = small && damping < 1e-3
      // Where the model bends little over the step, the next one may be freer.
      const kept = (normal.squares - tried.squares) / gain
      if (kept > 0.75) damping = damping < 1e-6 ? 0 : damping / 10
      else if (small) damping = 0
      parameters = next
      normal = tried
    } else {
      damping = damping === 0 ? 1e-3 : damping * 10
    }
  }
  const factor = settled ? factorOf(normal.matrix) : null
  if (!factor) return null
  return { parameters, factor, squares: normal.squares, dof: x.length - p, residuals: normal.residuals }
}
