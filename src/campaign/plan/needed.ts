/** What a measure would have to be, all else as it is, for an inequality to stand exactly on its limit. */
import { evaluate } from '../../quantity/formula/index.ts'
import type { FormulaFunction, Node } from '../../quantity/formula/types.ts'

export type Numbers = Readonly<Record<string, number>>
type Functions = Readonly<Record<string, FormulaFunction>>
type Compare = Extract<Node, { type: 'compare' }>

/** Looked at are ten steps a decade, so far up and down from where the measure is thought to be. */
const PER_DECADE = 10
const DECADES = 8
const HALVINGS = 80

/** `left − right` of an inequality of two sides, as a function of one name; NaN where it cannot be had. */
const gapOf = (compare: Compare, name: string, values: Numbers, functions: Functions) => {
  const [left, right] = compare.operands
  return (x: number): number => {
    const at = { ...values, [name]: x }
    const [a, b] = [left && evaluate(left, at, functions), right && evaluate(right, at, functions)]
    return a?.ok && b?.ok ? a.value - b.value : Number.NaN
  }
}

/** The zero between two places where the gap has different signs; null where it is a pole. */
const bisect = (gap: (x: number) => number, low: number, high: number): number | null => {
  let [a, b] = [low, high]
  const sign = Math.sign(gap(a))
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (a + b) / 2
    if (Math.sign(gap(middle)) === sign) a = middle
    else b = middle
  }
  const size = Math.max(Math.abs(gap(low)), Math.abs(gap(high)))
  return Math.abs(gap(a)) <= 1e-6 * size ? a : null
}

/**
 * The value nearest to `near` (same sign, by ratio) at which the inequality is just met.
 * Null for chains such as `a <= b <= c`, where nothing within eight decades does it, or where it cannot be computed.
 */
export const neededValue = (
  compare: Compare,
  name: string,
  near: number,
  values: Numbers,
  functions: Functions,
): number | null => {
  if (compare.operands.length !== 2 || !(Math.abs(near) > 0)) return null
  const gap = gapOf(compare, name, values, functions)
  const factor = 10 ** (1 / PER_DECADE)
  const crossing = (by: number): number | null => {
    let x = near
    for (let i = 0; i < PER_DECADE * DECADES; i += 1) {
      const next = x * by
      const [here, there] = [gap(x), gap(next)]
      if (here === 0) return x
      if (here * there < 0) {
        const found = bisect(gap, x, next)
        if (found !== null) return found
      }
      x = next
    }
    return null
  }
  const found = [crossing(factor), crossing(1 / factor)].flatMap((each) => (each === null ? [] : [each]))
  const far = (x: number) => Math.abs(Math.log(x / near))
  return found.length === 0 ? null : found.reduce((best, x) => (far(x) < far(best) ? x : best))
}
