/**
 * Repeats within a round are one body of evidence: five tries at the limit would otherwise pass one time in four.
 * Measures are averaged with weights from what is independent in each run; what the runs share stays shared.
 */
import type { Measures } from '../methods/method.ts'
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

/** Weighted mean; sources add linearly with their sign, so a shared gauge does not average out. */
export const poolQuantities = (quantities: readonly Quantity[]): Quantity => {
  const [first] = quantities
  if (!first) throw new RangeError('nothing to pool')
  if (quantities.length === 1) return first
  const shared = occurrences(quantities)
  const variances = quantities.map((each) => independentVariance(each, shared))
  const usable = variances.every((variance) => variance > 0)
  const raw = variances.map((variance) => (usable ? 1 / variance : 1))
  const total = raw.reduce((sum, weight) => sum + weight, 0)
  const weights = raw.map((weight) => weight / total)
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

/** Measures that every run of the pool gives. */
export const poolMeasures = (runs: readonly Run[]): Measures => {
  const [first, ...rest] = runs.flatMap((run) => (run.computed ? [run.computed.measures] : []))
  if (!first) return {}
  return Object.fromEntries(
    Object.keys(first).flatMap((name) => {
      const all = [first, ...rest].flatMap((measures) => measures[name] ?? [])
      return all.length === rest.length + 1 ? [[name, poolQuantities(all)]] : []
    }),
  )
}

/** Expanded uncertainty of each criterion's margin; null where not known. */
const widths = (run: Run): ReadonlyMap<string, number | null> =>
  new Map(
    run.judgements.map((judgement) => {
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
  const open = earlier.judgements.filter((judgement) => judgement.verdict === 'undetermined')
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
