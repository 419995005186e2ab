/** The regularised incomplete beta function I_x(ν/2, 1/2) with x = ν/(ν + t²): both tails of Student's t. */

/** Stirling's series for the logarithm of Γ, shifted upward to where it is exact (Abramowitz and Stegun 6.1.41). */
function logGamma(x: number): number {
  let shift = 0
  let a = x
  while (a < 15) {
    shift += Math.log(a)
    a++
  }
  const r = 1 / (a * a)
  const series = (1 / 12 - r * (1 / 360 - r * (1 / 1260 - r * (1 / 1680 - r * (1 / 1188))))) / a
  return (a - 0.5) * Math.log(a) - a + Math.log(2 * Math.PI) / 2 + series - shift
}

/** ln Γ(a + ½) − ln Γ(a). Two large logarithms would cancel for large a; the series of the ratio does not. */
export function logGammaHalfStep(a: number): number {
  if (a < 20) return logGamma(a + 0.5) - logGamma(a)
  const r = 1 / (a * a)
  return Math.log(a) / 2 - (1 / 8 - r * (1 / 192 - r * (1 / 640 - r * (17 / 14336)))) / a
}

/**
 * Continued fraction of I_x(a, b): 26.5.8 with every second step taken together, so that x close to 1 costs no
 * digits (it enters as y = 1 − x); by the modified Lentz method. I_x = x^a · y^b / (B(a, b) · fraction).
 */
function continuedFraction(x: number, y: number, a: number, b: number): number {
  const denominator = (m: number) =>
    // The middle term is 0 for m = 0, also where its divisor is.
    m +
    (m === 0 ? 0 : (m * (b - m) * x) / (a + 2 * m - 1)) +
    ((a + m) * (a * y - b * x + 1 + m * (2 - x))) / (a + 2 * m + 1)
  let c = denominator(0)
  let d = 0
  let fraction = c
  for (let m = 1; m < 100_000; m++) {
    const base = a + 2 * m - 1
    const numerator = ((m * (a + m - 1)) / base) * ((a + b + m - 1) / base) * (b - m) * x * x
    const next = denominator(m)
    d = 1 / (next + numerator * d)
    c = next + numerator / c
    fraction *= c * d
    if (Math.abs(c * d - 1) < 1e-16) break
  }
  return fraction
}

/**
 * @param square t², from which x and 1 − x are had without cancellation
 * @param halfStep `logGammaHalfStep(dof / 2)`, where many are asked for the same degrees of freedom
 */
export function incompleteBeta(dof: number, square: number, halfStep = logGammaHalfStep(dof / 2)): number {
  if (square === 0) return 1
  const a = dof / 2
  const x = dof / (dof + square)
  const y = square / (dof + square)
  // ln of x^a · y^½ / B(a, ½)
  const logFront = -a * Math.log1p(square / dof) + Math.log(y) / 2 + halfStep - Math.log(Math.PI) / 2
  if (x < (a + 1) / (a + 2.5)) return Math.exp(logFront) / continuedFraction(x, y, a, 0.5)
  return 1 - Math.exp(logFront) / continuedFraction(y, x, 0.5, a)
}
