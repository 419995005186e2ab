/**
 * Normal and Student's t distribution: probabilities and quantiles, relative error below 1e-12 in the tails too.
 * Equations: Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.5, 7.1.14, 26.5.8, 26.7.1, 26.7.5.
 */
import { incompleteBeta, logGammaHalfStep } from './incomplete-beta.ts'

const SQRT_2 = Math.SQRT2
const SQRT_PI = Math.sqrt(Math.PI)

/** Complementary error function: a series near 0 (7.1.6), a continued fraction in the tail (7.1.14). */
function erfc(x: number): number {
  if (x < 0) return 2 - erfc(-x)
  if (x < 2) {
    let term = x
    let sum = x
    for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
      term *= (2 * x * x) / (2 * n + 1)
      sum += term
    }
    return 1 - (2 / SQRT_PI) * Math.exp(-x * x) * sum
  }
  // Evaluated from the inside out; 60 steps are enough from x = 2 on.
  let fraction = x
  for (let n = 60; n >= 1; n--) fraction = x + n / 2 / fraction
  return Math.exp(-x * x) / (SQRT_PI * fraction)
}

/** Probability that a standard normal variable is at most z. */
export function normalCdf(z: number): number {
  return z < 0 ? erfc(-z / SQRT_2) / 2 : 1 - erfc(z / SQRT_2) / 2
}

function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
}

/** z with upper tail q ≤ 1/2: start after 26.2.23 (error 4.5e-4), then Newton on the logarithm of the tail. */
function upperNormal(q: number): number {
  if (q === 0) return Number.POSITIVE_INFINITY
  const r = Math.sqrt(-2 * Math.log(q))
  let z =
    r -
    (2.515517 + 0.802853 * r + 0.010328 * r * r) / (1 + 1.432788 * r + 0.189269 * r * r + 0.001308 * r ** 3)
  for (let i = 0; i < 4; i++) {
    const tail = erfc(z / SQRT_2) / 2
    z += (Math.log(tail / q) * tail) / normalDensity(z)
  }
  return z
}

/** z with normalCdf(z) = p. */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return Number.NaN
  if (p === 0.5) return 0
  return p < 0.5 ? -upperNormal(p) : upperNormal(1 - p)
}

/** From here on the expansions in 1/dof are exact to a double, and the continued fraction is slow. */
const MANY = 1e6

/** Density of Student's t. */
function tDensity(t: number, dof: number, halfStep: number): number {
  const half = halfStep - ((dof + 1) / 2) * Math.log1p((t * t) / dof)
  return Math.exp(half) / Math.sqrt(dof * Math.PI)
}

/** Probability that Student's t exceeds t ≥ 0 (26.7.1 in terms of the incomplete beta function). */
function tTail(t: number, dof: number, halfStep = logGammaHalfStep(dof / 2)): number {
  if (dof >= MANY) {
    // Normal deviate of equal probability (inverse of 26.7.5)
    const z = t - (t ** 3 + t) / (4 * dof) + (13 * t ** 5 + 8 * t ** 3 + 3 * t) / (96 * dof * dof)
    return normalCdf(-z)
  }
  return incompleteBeta(dof, t * t, halfStep) / 2
}

/** Probability that Student's t with `dof` degrees of freedom (any positive number, or Infinity) is at most t. */
export function tCdf(t: number, dof: number): number {
  if (!(dof > 0) || Number.isNaN(t)) return Number.NaN
  if (dof === Number.POSITIVE_INFINITY) return normalCdf(t)
  if (!Number.isFinite(t)) return t > 0 ? 1 : 0
  return t < 0 ? tTail(-t, dof) : 1 - tTail(t, dof)
}

/** t with upper tail q ≤ 1/2: bracketed, then Newton on the logarithm of the tail. */
function upperT(q: number, dof: number): number {
  if (q === 0) return Number.POSITIVE_INFINITY
  const halfStep = logGammaHalfStep(dof / 2)
  let low = 0
  let high = 1
  while (tTail(high, dof, halfStep) > q) {
    low = high
    high *= 2
  }
  let t = (low + high) / 2
  for (let i = 0; i < 100; i++) {
    const tail = tTail(t, dof, halfStep)
    if (tail > q) low = t
    else high = t
    let next = t + (Math.log(tail / q) * tail) / tDensity(t, dof, halfStep)
    if (!(next > low && next < high)) next = (low + high) / 2
    if (Math.abs(next - t) <= 1e-15 * t) return next
    t = next
  }
  return t
}

/** t with tCdf(t, dof) = p. */
export function tQuantile(p: number, dof: number): number {
  if (!(p >= 0 && p <= 1) || !(dof > 0)) return Number.NaN
  if (p === 0.5) return 0
  if (dof >= MANY) {
    const z = normalQuantile(p)
    if (dof === Number.POSITIVE_INFINITY || !Number.isFinite(z)) return z
    // 26.7.5
    return z + (z ** 3 + z) / (4 * dof) + (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * dof * dof)
  }
  return p < 0.5 ? -upperT(p, dof) : upperT(1 - p, dof)
}
