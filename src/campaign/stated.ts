import { exact, fromStated, unknown as notKnown } from '../quantity/quantity.ts'
import type { Quantity, Stated } from '../quantity/types.ts'

/** A resolution or an uncertainty that was written in °C is a difference: the zero of the scale does not count. */
export const differenceOf = (stated: Stated): number => stated.value - stated.unit.offset

/** A known given needs ± or `(exact)`; without either its uncertainty is not known, which is not zero. */
export const knownOf = (name: string, stated: Stated, source: string): Quantity => {
  if (stated.exact) return exact(stated.value, stated.unit.dim)
  if (stated.u === null) {
    return notKnown(stated.value, stated.unit.dim, `${name} is given without ± and without (exact)`)
  }
  return fromStated(stated, source)
}

export const setpointOf = (stated: Stated): Quantity => exact(stated.value, stated.unit.dim)
