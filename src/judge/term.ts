/** One inequality of a criterion: which side is the value, what is the limit, and what is left between them. */
import { evaluateQuantity, namesIn } from '../quantity/formula/index.ts'
import type { Comparison, FormulaFunction, Node } from '../quantity/formula/types.ts'
import { exact, expanded } from '../quantity/quantity.ts'
import type { Quantity, Result, Unit } from '../quantity/types.ts'
import { probabilityOfRoom, upperBound } from './probability.ts'
import type { Term, Verdict } from './types.ts'

type Compare = Extract<Node, { type: 'compare' }>

/** What a criterion may speak of. `measures` names those entries of `values` that were measured or derived. */
export type Scope = {
  readonly values: Readonly<Record<string, Quantity>>
  readonly measures: ReadonlySet<string>
  /** Measures that cannot be negative. */
  readonly positive: ReadonlySet<string>
  readonly functions: Readonly<Record<string, FormulaFunction>>
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

/** A term stands alone at p; the criterion as a whole is decided by all of them together. */
const verdictOf = (
  probability: number | null,
  low: number | null,
  high: number | null,
  p: number | null,
  inside: boolean,
): Verdict => {
  if (p === null) return inside ? 'pass' : 'fail'
  if (probability === null || low === null || high === null) return 'undetermined'
  if (probability >= p) return 'pass'
  return low >= p || high >= p ? 'fail' : 'undetermined'
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
  const scale = Math.max(Math.abs(value.value.value), ...limits.map((limit) => Math.abs(limit.value)))
  const room = (from: Node, to: Node): Quantity => {
    const margin = evaluate(minus(to, from))
    return margin.ok ? margin.value : exact(Number.NaN, value.value.dim)
  }
  const measures = measuresIn(compare, scope)
  const common = { text, value: value.value, limits, unit, measures }

  if (form.form === 'between') {
    const below = room(form.low, form.value)
    const above = room(form.value, form.high)
    const fits = probabilityOfRoom(below, form.lowStrict, scale)
    const fitsHigh = probabilityOfRoom(above, form.highStrict, scale)
    const low = fits === null ? null : 1 - fits
    const high = fitsHigh === null ? null : 1 - fitsHigh
    const probability = low === null || high === null ? null : Math.max(0, 1 - low - high)
    const inside = holds(below.value, form.lowStrict, scale) && holds(above.value, form.highStrict, scale)
    const [lowest, highest] = limits as [Quantity, Quantity]
    return {
      ok: true,
      value: {
        ...common,
        direction: 'between',
        margin: below.value < above.value ? below : above,
        probability,
        probabilityLow: low,
        probabilityHigh: high,
        verdict: verdictOf(probability, low, high, p, inside),
        lessThan: null,
        ratio: ratioOf((highest.value - lowest.value) / 2, value.value),
      },
    }
  }

  const upward = form.op === '>' || form.op === '>='
  const margin = upward ? room(form.limit, form.value) : room(form.value, form.limit)
  const probability = probabilityOfRoom(margin, isStrict(form.op), scale)
  const missed = probability === null ? null : 1 - probability
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
      verdict: verdictOf(probability, upward ? missed : none, upward ? none : missed, p, inside),
      lessThan: alone && !upward ? upperBound(value.value, 0.95) : null,
      ratio: ratioOf(Math.abs((limits[0] as Quantity).value), value.value),
    },
  }
}

const holds = (margin: number, strict: boolean, scale: number): boolean =>
  Math.abs(margin) <= 1e-12 * scale ? !strict : margin > 0
