/** One inequality of a criterion: which side is the value, what is the limit, and what is left between them. */

import { subtract } from '../quantity/combine.ts'
import { type Draws, withDraws } from '../quantity/draws.ts'
import { evaluateDraws, evaluateQuantity, namesIn } from '../quantity/formula/index.ts'
import type { Comparison, FormulaFunction, Node } from '../quantity/formula/types.ts'
import { exact, expanded } from '../quantity/quantity.ts'
import type { Quantity, Result, Unit } from '../quantity/types.ts'
import { upperBound } from './probability.ts'
import { type Room, roomOf, toleranceOfShare } from './room.ts'
import type { Term, Verdict } from './types.ts'

type Compare = Extract<Node, { type: 'compare' }>

/** What a criterion may speak of. `measures` names those entries of `values` that were measured or derived. */
export type Scope = {
  readonly values: Readonly<Record<string, Quantity>>
  readonly measures: ReadonlySet<string>
  /** Measures that cannot be negative. */
  readonly positive: ReadonlySet<string>
  readonly functions: Readonly<Record<string, FormulaFunction>>
  /** Where the card asks for Monte Carlo: the values of one trial after the other. */
  readonly draws?: Draws
}

/** The same inequality with the value first: `6 < x` is `x > 6`. */
type Ordered =
  | { readonly form: 'one'; readonly value: Node; readonly op: Comparison; readonly limit: Node }
  | {
      readonly form: 'between'
      readonly low: Node
      readonly lowStrict: boolean
      readonly value: Node
      readonly high: Node
      readonly highStrict: boolean
    }

const MIRROR: Readonly<Record<Comparison, Comparison>> = { '<': '>', '<=': '>=', '>': '<', '>=': '<=' }

const isStrict = (op: Comparison): boolean => op === '<' || op === '>'

const minus = (left: Node, right: Node): Node => ({
  type: 'arithmetic',
  op: '-',
  left,
  right,
  start: left.start,
  end: right.end,
})

const order = (compare: Compare, scope: Scope): Result<Ordered, string> => {
  const [a, b, c] = compare.operands
  const [first, second] = compare.ops
  if (!a || !b || !first)
    return { ok: false, error: 'a criterion compares two things, or one thing with two limits' }
  const measured = (node: Node) => namesIn(node, scope.functions).some((name) => scope.measures.has(name))
  if (c && second) {
    const rising = (op: Comparison) => op === '<' || op === '<='
    if (rising(first) !== rising(second))
      return { ok: false, error: 'both comparisons of an interval must point the same way' }
    const [low, lowOp, high, highOp] = rising(first) ? [a, first, c, second] : [c, second, a, first]
    return {
      ok: true,
      value: {
        form: 'between',
        low,
        lowStrict: isStrict(lowOp),
        value: b,
        high,
        highStrict: isStrict(highOp),
      },
    }
  }
  if (measured(a) && measured(b)) {
    const zero: Node = { type: 'minus', of: minus(b, b), start: b.start, end: b.end }
    return { ok: true, value: { form: 'one', value: minus(a, b), op: first, limit: zero } }
  }
  if (measured(b)) return { ok: true, value: { form: 'one', value: b, op: MIRROR[first], limit: a } }
  return { ok: true, value: { form: 'one', value: a, op: first, limit: b } }
}

const isExact = ({ parts }: Quantity): boolean => parts !== null && Object.keys(parts).length === 0

/** A term stands alone at p; the criterion as a whole is decided by all of them together. */
const verdictOf = (
  probability: number | null,
  low: number | null,
  high: number | null,
  p: number | null,
  inside: boolean,
  draws: number,
): Verdict => {
  if (p === null) return inside ? 'pass' : 'fail'
  if (probability === null || low === null || high === null) return 'undetermined'
  const surely = (share: number) => share - toleranceOfShare(share, draws) >= p
  if (surely(probability)) return 'pass'
  return surely(low) || surely(high) ? 'fail' : 'undetermined'
}

const measuresIn = (compare: Compare, scope: Scope): string[] => [
  ...new Set(
    compare.operands
      .flatMap((node) => namesIn(node, scope.functions))
      .filter((name) => scope.measures.has(name)),
  ),
]

const ratioOf = (room: number, value: Quantity): number | null => {
  const U = expanded(value)?.U
  return U && U > 0 && room > 0 ? room / U : null
}

/**
 * Judges one inequality. `p` is the confidence of a guarded rule, null for a simple one.
 * Errors: a sentence, where the formula cannot be evaluated with what is in scope.
 */
export const judgeTerm = (
  compare: Compare,
  text: string,
  scope: Scope,
  p: number | null,
  unit: Unit,
): Result<Term, string> => {
  const ordered = order(compare, scope)
  if (!ordered.ok) return ordered
  const evaluate = (node: Node) => evaluateQuantity(node, scope.values, scope.functions)
  const form = ordered.value
  const limitNodes = form.form === 'one' ? [form.limit] : [form.low, form.high]
  const value = evaluate(form.value)
  if (!value.ok) return { ok: false, error: value.error[0]?.message ?? 'the value cannot be computed' }
  const limits: Quantity[] = []
  for (const node of limitNodes) {
    const limit = evaluate(node)
    if (!limit.ok) return { ok: false, error: limit.error[0]?.message ?? 'the limit cannot be computed' }
    limits.push(limit.value)
  }
  const { draws: trials } = scope
  const shown = trials
    ? withDraws(value.value, evaluateDraws(form.value, trials, scope.values, scope.functions))
    : value.value
  const scale = Math.max(Math.abs(value.value.value), ...limits.map((limit) => Math.abs(limit.value)))
  const marginOf = (from: Node, to: Node): Quantity => {
    const [low, high] = [known(from), known(to)]
    // A limit without uncertainty is taken off as it is: the formula is not propagated once more.
    if (low && high && (isExact(low) || isExact(high))) return subtract(high, low)
    const margin = evaluate(minus(to, from))
    return margin.ok ? margin.value : exact(Number.NaN, value.value.dim)
  }
  const room = (from: Node, to: Node, strict: boolean): Room =>
    roomOf(marginOf(from, to), minus(to, from), strict, scale, scope)
  const known = (node: Node): Quantity | undefined =>
    node === form.value ? value.value : limits[limitNodes.indexOf(node)]
  const measures = measuresIn(compare, scope)
  const common = { text, value: shown, limits, unit, measures }

  if (form.form === 'between') {
    const below = room(form.low, form.value, form.lowStrict)
    const above = room(form.value, form.high, form.highStrict)
    const [low, high] = [below.missed, above.missed]
    // What falls short of the one limit does not go beyond the other.
    const probability = below.met === null || high === null ? null : Math.max(0, below.met - high)
    const [least, most] = [below.margin, above.margin]
    const inside = holds(least.value, form.lowStrict, scale) && holds(most.value, form.highStrict, scale)
    const draws = Math.max(below.draws, above.draws)
    const [lowest, highest] = limits as [Quantity, Quantity]
    return {
      ok: true,
      value: {
        ...common,
        direction: 'between',
        margin: least.value < most.value ? least : most,
        probability,
        probabilityLow: low,
        probabilityHigh: high,
        ...tolerance(probability, draws),
        verdict: verdictOf(probability, low, high, p, inside, draws),
        lessThan: null,
        ratio: ratioOf((highest.value - lowest.value) / 2, shown),
      },
    }
  }

  const upward = form.op === '>' || form.op === '>='
  const { margin, met, missed, draws } = upward
    ? room(form.limit, form.value, isStrict(form.op))
    : room(form.value, form.limit, isStrict(form.op))
  const probability = met
  const none = probability === null ? null : 0
  const inside = holds(margin.value, isStrict(form.op), scale)
  const alone = form.value.type === 'name' && scope.positive.has(form.value.name)
  return {
    ok: true,
    value: {
      ...common,
      direction: upward ? 'above' : 'below',
      margin,
      probability,
      probabilityLow: upward ? missed : none,
      probabilityHigh: upward ? none : missed,
      ...tolerance(probability, draws),
      verdict: verdictOf(probability, upward ? missed : none, upward ? none : missed, p, inside, draws),
      lessThan: alone && !upward ? upperBound(shown, 0.95) : null,
      ratio: ratioOf(Math.abs((limits[0] as Quantity).value), shown),
    },
  }
}

const tolerance = (share: number | null, draws: number): { tolerance?: number } =>
  share === null || draws === 0 ? {} : { tolerance: toleranceOfShare(share, draws) }

const holds = (margin: number, strict: boolean, scale: number): boolean =>
  Math.abs(margin) <= 1e-12 * scale ? !strict : margin > 0
