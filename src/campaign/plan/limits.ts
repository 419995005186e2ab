/** The value of a measure at which each criterion is just met: known before the test where one measure stands alone in it. */
import type { CardRecord } from '../../format/types.ts'
import type { Schema } from '../../methods/method.ts'
import type { PlanLimit } from '../../methods/plan.ts'
import { conjuncts, evaluate, namesIn } from '../../quantity/formula/index.ts'
import type { Node } from '../../quantity/formula/types.ts'
import type { CardFormulas, Functions } from '../formulas.ts'
import { type Numbers, neededValue } from './needed.ts'

type Compare = Extract<Node, { type: 'compare' }>

export type LimitsInput = {
  readonly card: CardRecord
  readonly schema: Schema
  readonly formulas: CardFormulas
  readonly functions: Functions
  /** Givens and targets, SI. */
  readonly numbers: Numbers
}

/** On which side of its limit the measure must be: the inequality tried a little to either side. */
const directionAt = (
  compare: Compare,
  name: string,
  value: number,
  { numbers, functions }: LimitsInput,
): 'below' | 'above' | null => {
  const [left, right] = compare.operands
  const met = (x: number): boolean | null => {
    const at = { ...numbers, [name]: x }
    const [a, b] = [left && evaluate(left, at, functions), right && evaluate(right, at, functions)]
    if (!a?.ok || !b?.ok) return null
    return compare.ops[0]?.startsWith('<') ? a.value < b.value : a.value > b.value
  }
  const step = Math.max(Math.abs(value) * 1e-3, Number.MIN_VALUE)
  const [under, over] = [met(value - step), met(value + step)]
  if (under === over || under === null || over === null) return null
  return under ? 'below' : 'above'
}

/** `name < limit` with the measure itself on one side: no search is needed, and the limit may be 0 or negative. */
const direct = (compare: Compare, name: string, { numbers, functions }: LimitsInput): number | null => {
  const other = compare.operands.find((node) => !(node.type === 'name' && node.name === name))
  if (compare.operands.length !== 2 || !other || namesIn(other, functions).includes(name)) return null
  if (!compare.operands.some((node) => node.type === 'name' && node.name === name)) return null
  const limit = evaluate(other, numbers, functions)
  return limit.ok ? limit.value : null
}

export const planLimits = (input: LimitsInput): PlanLimit[] => {
  const { card, schema, formulas, functions } = input
  const measured = new Set([...schema.measures.map((field) => field.name), ...formulas.derive.keys()])
  return card.criteria.flatMap(({ id }) => {
    const formula = formulas.criteria.get(id)
    const compares = formula && conjuncts(formula)
    return (compares?.ok ? compares.value : []).flatMap((compare) => {
      if (compare.type !== 'compare') return []
      const [measure, ...others] = namesIn(compare, functions).filter((name) => measured.has(name))
      if (measure === undefined || others.length > 0) return []
      const value =
        direct(compare, measure, input) ?? neededValue(compare, measure, 1, input.numbers, functions)
      const direction = value === null ? null : directionAt(compare, measure, value, input)
      return value === null || direction === null
        ? []
        : [{ criterion: id.replaceAll('_', ' '), measure, direction, value }]
    })
  })
}
