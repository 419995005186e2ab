/**
 * Repeats within a round are one body of evidence: five tries at the limit would otherwise pass one time in four.
 * Measures are averaged with weights from what is independent in each run; what the runs share stays shared.
 */
import type { Measures } from '../methods/method.ts'
import type { Draws } from '../quantity/draws.ts'
import { filled } from '../quantity/loops.ts'
import { expanded, newParts } from '../quantity/quantity.ts'
import type { Part, Quantity } from '../quantity/types.ts'
import type { Run } from './types.ts'

/** In how many of the quantities each source stands. */
const occurrences = (quantities: readonly Quantity[]): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>()
  for (const { parts } of quantities) {
    for (const source in parts) counts.set(source, (counts.get(source) ?? 0) + 1)
  }
  return counts
}

/** What no other of them shares. */
const independentVariance = ({ parts }: Quantity, shared: ReadonlyMap<string, number>): number => {
  let sum = 0
  for (const source in parts) if (shared.get(source) === 1) sum += (parts[source] as Part).u ** 2
  return sum
}

/** By what is independent in each; all alike where one has nothing of its own. They add up to 1. */
const weightsOf = (quantities: readonly Quantity[]): number[] => {
  const shared = occurrences(quantities)
  const variances = quantities.map((each) => independentVariance(each, shared))
  const usable = variances.every((variance) => variance > 0)
  const raw = variances.map((variance) => (usable ? 1 / variance : 1))
  const total = raw.reduce((sum, weight) => sum + weight, 0)
  return raw.map((weight) => weight / total)
}

/** Weighted mean; sources add linearly with their sign, so a shared gauge does not average out. */
export const poolQuantities = (quantities: readonly Quantity[]): Quantity => {
  const [first] = quantities
  if (!first) throw new RangeError('nothing to pool')
  if (quantities.length === 1) return first
  const weights = weightsOf(quantities)
  const value = quantities.reduce((sum, each, index) => sum + each.value * (weights[index] as number), 0)
  const why = [...new Set(quantities.flatMap((each) => each.why))]
  if (quantities.some((each) => each.parts === null)) return { value, dim: first.dim, parts: null, why }
  const parts = newParts()
  for (const [index, each] of quantities.entries()) {
    for (const source in each.parts) {
      const { u, dof, pool, shape } = each.parts[source] as Part
      parts[source] = { u: (parts[source]?.u ?? 0) + u * (weights[index] as number), dof, pool, shape }
    }
  }
  return { value, dim: first.dim, parts, why: [] }
}

/** Each measure that every run of the pool gives, in the order of the runs. */
const commonMeasures = (runs: readonly Run[]): readonly (readonly [string, readonly Quantity[]])[] => {
  const [first, ...rest] = runs.flatMap((run) => (run.computed ? [run.computed.measures] : []))
  if (!first) return []
  return Object.keys(first).flatMap((name) => {
    const all = [first, ...rest].flatMap((measures) => measures[name] ?? [])
    return all.length === rest.length + 1 ? [[name, all] as const] : []
  })
}

export const poolMeasures = (runs: readonly Run[]): Measures =>
  Object.fromEntries(commonMeasures(runs).map(([name, all]) => [name, poolQuantities(all)]))

/**
 * Draws of the pooled measures, with the weights of the pool. Every source has its own stream, so what the runs share
 * moves together in all of them. Givens are those of the first run. Null where a run has no draws.
 */
export const poolDraws = (runs: readonly Run[]): ((batch: number) => Draws) | null => {
  const computed = runs.flatMap((run) => run.computed ?? [])
  const draws = computed.flatMap((each) => each.draws ?? [])
  if (draws.length === 0 || draws.length < computed.length) return null
  const weighted = commonMeasures(runs).map(([name, all]) => ({ name, all, weights: weightsOf(all) }))
  return (batch) => {
    const own = draws.map((draw) => draw(batch))
    const pooled = weighted.flatMap(({ name, all, weights }) => {
      const values = own.map((each) => each[name])
      const length = values.find((each) => each)?.length
      if (length === undefined) return []
      const mean = filled(length, (trial) =>
        weights.reduce(
          (sum, weight, k) => sum + weight * (values[k]?.[trial] ?? (all[k] as Quantity).value),
          0,
        ),
      )
      return [[name, mean] as const]
    })
    return { ...own[0], ...Object.fromEntries(pooled) }
  }
}

/** Expanded uncertainty of each criterion's margin; null where not known. */
const widths = (run: Run): ReadonlyMap<string, number | null> =>
  new Map(
    run.counting.map((judgement) => {
      const each = judgement.terms.map((term) => expanded(term.margin)?.U ?? null)
      return [
        judgement.criterion,
        each.length === 0 || each.includes(null) ? null : Math.max(...(each as number[])),
      ]
    }),
  )

/** A later run settles an undetermined one where its U is at most two thirds: a finer gauge, a longer hold. */
const settles = (later: Run, earlier: Run): boolean => {
  const before = widths(earlier)
  const after = widths(later)
  const open = earlier.counting.filter((judgement) => judgement.verdict === 'undetermined')
  return open.every(({ criterion }) => {
    const old = before.get(criterion) ?? null
    const now = after.get(criterion) ?? null
    return now !== null && (old === null || now <= (2 / 3) * old)
  })
}

/** Barred by a condition of the method: its numbers do not speak of the article as the card asks. */
const barred = (run: Run): boolean => run.judgements.some((judgement) => judgement.barred)

export const counts = (run: Run): boolean => !run.record.void && !run.record.stopped && run.computed !== null

/** The runs whose numbers decide a round. */
export const decidingRuns = (runs: readonly Run[]): readonly Run[] => {
  const valid = runs.filter((run) => counts(run) && !barred(run))
  return valid.filter(
    (run, index) =>
      run.wouldBe !== 'undetermined' || !valid.slice(index + 1).some((later) => settles(later, run)),
  )
}
