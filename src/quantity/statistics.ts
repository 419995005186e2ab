/** Mean, spread and middle of readings. */

/** NaN for no values. Two passes, so that a large common part costs no digits. */
export function mean(values: ArrayLike<number>): number {
  const n = values.length
  if (n === 0) return Number.NaN
  let sum = 0
  for (let i = 0; i < n; i++) sum += values[i] ?? Number.NaN
  const first = sum / n
  let rest = 0
  for (let i = 0; i < n; i++) rest += (values[i] ?? Number.NaN) - first
  return first + rest / n
}

/**
 * Experimental standard deviation with n − 1 (GUM 4.2.2). NaN for fewer than two values: one reading has no spread.
 * `middle` is their mean, where it is known already.
 */
export function standardDeviation(values: ArrayLike<number>, middle = mean(values)): number {
  const n = values.length
  if (n < 2) return Number.NaN
  let squares = 0
  let rest = 0
  for (let i = 0; i < n; i++) {
    const deviation = (values[i] ?? Number.NaN) - middle
    squares += deviation * deviation
    rest += deviation
  }
  // What the rounding of the mean left over is taken out again.
  return Math.sqrt(Math.max(0, squares - (rest * rest) / n) / (n - 1))
}

/** NaN for no values. The middle value, or halfway between the two. */
export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort()
  const n = sorted.length
  return ((sorted[Math.floor((n - 1) / 2)] ?? Number.NaN) + (sorted[Math.floor(n / 2)] ?? Number.NaN)) / 2
}
