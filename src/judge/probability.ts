/** How probable it is that the true margin is not negative (JCGM 106, 7.2 and 7.3; Student's t for few degrees of freedom). */
import { tCdf, tQuantile } from '../quantity/distribution.ts'
import { effectiveDof, standardUncertainty } from '../quantity/quantity.ts'
import type { Quantity } from '../quantity/types.ts'

/** Relative size below which two numbers are the same number written differently: a float's tail never decides. */
const TAIL = 1e-12

export const sameNumber = (a: number, b: number, scale = Math.max(Math.abs(a), Math.abs(b))): boolean =>
  Math.abs(a - b) <= TAIL * scale

/**
 * P(margin ≥ 0), or P(margin > 0) where the comparison is strict: the two differ only for exact quantities.
 * Null where the uncertainty is not known. `scale` is the size of the numbers that were subtracted.
 */
export const probabilityOfRoom = (margin: Quantity, strict: boolean, scale: number): number | null => {
  const u = standardUncertainty(margin)
  if (u === null) return null
  if (u <= TAIL * scale) {
    if (Math.abs(margin.value) <= TAIL * scale) return strict ? 0 : 1
    return margin.value > 0 ? 1 : 0
  }
  return tCdf(margin.value / u, effectiveDof(margin))
}

/** One-sided upper bound of a quantity that cannot be negative: max(value, 0) + t·u at confidence p. */
export const upperBound = (quantity: Quantity, p: number): number | null => {
  if (quantity.simulated) return Math.max(quantity.value, 0) + quantity.simulated.bound - quantity.value
  const u = standardUncertainty(quantity)
  return u === null ? null : Math.max(quantity.value, 0) + tQuantile(p, effectiveDof(quantity)) * u
}
