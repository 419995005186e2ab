/** A value with its budget: what may be asked of it. Equations of JCGM 100:2008 (GUM). */
import { tQuantile } from './distribution.ts'
import type { Dimension, Part, Quantity, Source, Stated } from './types.ts'

export function exact(value: number, dim: Dimension): Quantity {
  return { value, dim, parts: {}, why: [] }
}

/** A value whose uncertainty is not known, which is not zero. `why` is one sentence. */
export function unknown(value: number, dim: Dimension, why: string): Quantity {
  return { value, dim, parts: null, why: [why] }
}

/**
 * Parts that are still to be collected. Without a prototype the engine keeps them as a table from the start: source
 * names are as many as runs, and each would else leave a shape of object behind.
 */
export function newParts(): Record<Source, Part> {
  return Object.create(null)
}

/** A quantity as written: its uncertainty is one source, taken as known (infinite degrees of freedom). */
export function fromStated(stated: Stated, source: Source, pool: string = source): Quantity {
  const { value, unit, u, shape } = stated
  if (u === null) return unknown(value, unit.dim, `\`${stated.text}\` is written without uncertainty`)
  if (u === 0) return exact(value, unit.dim)
  return {
    value,
    dim: unit.dim,
    parts: { [source]: { u, dof: Number.POSITIVE_INFINITY, pool, shape } },
    why: [],
  }
}

/** Combined standard uncertainty: of the draws where there are any, else by first order. Null where it is not known. */
export function standardUncertainty(q: Quantity): number | null {
  return q.simulated ? q.simulated.u : firstOrderUncertainty(q)
}

/** Independent sources in quadrature (GUM 5.1.2). */
export function firstOrderUncertainty(q: Quantity): number | null {
  if (!q.parts) return null
  let sum = 0
  for (const source in q.parts) sum += (q.parts[source] as Part).u ** 2
  return Math.sqrt(sum)
}

/** One line for each pool: its parts in quadrature, with the pool's degrees of freedom. */
function pools(parts: readonly Part[]): { u: number; dof: number }[] {
  const lines = new Map<string, { u: number; dof: number }>()
  for (const { pool, u, dof } of parts) {
    const line = lines.get(pool)
    if (line) {
      line.u = Math.sqrt(line.u * line.u + u * u)
      line.dof = Math.min(line.dof, dof)
    } else lines.set(pool, { u: Math.abs(u), dof })
  }
  return [...lines.values()]
}

/**
 * Effective degrees of freedom after Welch and Satterthwaite (GUM G.4.1 eq. G.2b): u⁴ / Σ uᵢ⁴/νᵢ.
 * Infinity where nothing is estimated or nothing is known.
 */
export function effectiveDof(q: Quantity): number {
  const u = firstOrderUncertainty(q)
  if (!q.parts || !u) return Number.POSITIVE_INFINITY
  const sum = pools(Object.values(q.parts)).reduce((total, line) => total + (line.u / u) ** 4 / line.dof, 0)
  return 1 / sum
}

/** Two-sided factor for coverage p, from Student's t at the effective degrees of freedom (GUM G.3.2). */
export function coverageFactor(q: Quantity, p = 0.95): number {
  return tQuantile((1 + p) / 2, effectiveDof(q))
}

/**
 * Expanded uncertainty for 95 %, with the factor and the degrees of freedom it comes from. Of draws the distance from
 * the value to the farther end of their 95 % interval, so that ± holds all of it.
 */
export function expanded(
  q: Quantity,
): { readonly U: number; readonly k: number; readonly dof: number } | null {
  if (q.simulated) {
    const { low, high, u } = q.simulated
    const U = Math.max(high - q.value, q.value - low)
    return { U, k: U / u, dof: Number.POSITIVE_INFINITY }
  }
  const u = standardUncertainty(q)
  if (u === null) return null
  const dof = effectiveDof(q)
  const k = tQuantile((1 + 0.95) / 2, dof)
  return { U: k * u, k, dof }
}

export type BudgetLine = {
  readonly source: Source
  /** Signed standard uncertainty in SI. */
  readonly u: number
  /** Part of the variance, 0 to 1. */
  readonly share: number
  readonly dof: number
}

/** The uncertainty budget, largest share first; empty where the uncertainty is not known. */
export function budget(q: Quantity): BudgetLine[] {
  const variance = (firstOrderUncertainty(q) ?? 0) ** 2
  return Object.entries(q.parts ?? {})
    .map(([source, { u, dof }]) => ({ source, u, share: variance > 0 ? u ** 2 / variance : 0, dof }))
    .sort((a, b) => b.share - a.share || (a.source < b.source ? -1 : 1))
}

/** Correlation coefficient of two quantities, from the sources that they share (GUM F.1.2.3). NaN where u is 0 or not known. */
export function correlation(a: Quantity, b: Quantity): number {
  const [ua, ub] = [firstOrderUncertainty(a), firstOrderUncertainty(b)]
  if (!ua || !ub) return Number.NaN
  const covariance = Object.entries(a.parts ?? {}).reduce(
    (sum, [source, { u }]) => sum + u * (b.parts?.[source]?.u ?? 0),
    0,
  )
  // Rounding may carry a full correlation past 1.
  return Math.max(-1, Math.min(1, covariance / (ua * ub)))
}
