/** The criteria of today beside those of the card as run, for one run: which way did a limit move? */
import type { Judgement, Term, Verdict } from '../../judge/types.ts'
import type { Shift } from './types.ts'

const RANK: Readonly<Record<Verdict, number>> = { fail: 0, undetermined: 1, pass: 2 }

export const worse = (a: Verdict, b: Verdict): Verdict => (RANK[a] <= RANK[b] ? a : b)

/** The same quantity against limits on the same side. */
const sameShape = (then: Term, now: Term): boolean =>
  then.direction === now.direction &&
  then.limits.length === now.limits.length &&
  then.measures.join() === now.measures.join()

/** By how much the margin grew; 0 where only the last digits of the arithmetic differ. */
const grown = (then: Term, now: Term): number => {
  const size = Math.max(...[...then.limits, ...now.limits, then.value].map(({ value }) => Math.abs(value)))
  const growth = now.margin.value - then.margin.value
  return Math.abs(growth) <= 1e-9 * size ? 0 : growth
}

const shiftOf = (then: Judgement, now: Judgement): Shift['is'] => {
  if (RANK[now.verdict] > RANK[then.verdict]) return 'laxer'
  const pairs = then.terms.map((term, index) => [term, now.terms[index]] as const)
  const alike = then.terms.length === now.terms.length && then.rule.text === now.rule.text
  const growths = pairs.map(([old, is]) => (is && sameShape(old, is) ? grown(old, is) : Number.NaN))
  if (!alike || growths.some(Number.isNaN)) return 'not comparable'
  if (growths.some((growth) => growth > 0)) return 'laxer'
  return growths.some((growth) => growth < 0) || RANK[now.verdict] < RANK[then.verdict] ? 'stricter' : 'same'
}

/** A criterion that is new is stricter than none; one that is gone compares with nothing. */
export const shiftsOf = (then: readonly Judgement[], now: readonly Judgement[]): Shift[] => [
  ...now.map((judgement): Shift => {
    const old = then.find(({ criterion }) => criterion === judgement.criterion)
    return { criterion: judgement.criterion, is: old ? shiftOf(old, judgement) : 'stricter' }
  }),
  ...then
    .filter(({ criterion }) => !now.some((judgement) => judgement.criterion === criterion))
    .map(({ criterion }): Shift => ({ criterion, is: 'not comparable' })),
]

/** For each criterion the worst of several judgements of it, in the order in which criteria come up. */
export const worstOf = (...states: readonly (readonly Judgement[])[]): Judgement[] => {
  const counting = new Map<string, Judgement>()
  for (const judgement of states.flat()) {
    const known = counting.get(judgement.criterion)
    if (!known || RANK[judgement.verdict] < RANK[known.verdict]) counting.set(judgement.criterion, judgement)
  }
  return [...counting.values()]
}
