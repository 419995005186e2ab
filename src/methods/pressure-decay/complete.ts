/** Measures that follow from the uncertainty of others. */
import { tQuantile } from '../../quantity/distribution.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Measures } from '../method.ts'

/**
 * A budget is itself known to about 10 % at best, which is what 50 degrees of freedom stand for
 * (JCGM 100, G.4.2 and table E.1).
 */
const BEST_DOF = 50

/**
 * The smallest leak that is told from none with 5 % risk of either mistake: 2 t₀.₉₅(ν) u, 3.29 u for many degrees
 * of freedom (ISO 11843-1). Its own u says how well the budget is known: value/√(2ν).
 */
export const complete = (measures: Measures): Measures => {
  const leak = measures.leak_rate
  const u = leak ? standardUncertainty(leak) : null
  if (!leak || u === null) return {}
  const dof = effectiveDof(leak)
  const value = 2 * tQuantile(0.95, dof) * u
  const own = value / Math.sqrt(2 * Math.min(dof, BEST_DOF))
  const source = 'fit:detectable_leak'
  const parts = {
    [source]: { u: own, dof: Number.POSITIVE_INFINITY, pool: source, shape: 'normal' },
  } as const
  return { detectable_leak: { value, dim: KINDS['volume-flow'].dim, parts, why: [] } }
}
