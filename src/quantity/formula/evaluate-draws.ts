/** A formula over joint draws. */
import type { Draws } from '../draws.ts'
import type { Quantity } from '../types.ts'
import { evaluate } from './evaluate.ts'
import { namesIn } from './names.ts'
import type { FormulaFunction, Node } from './types.ts'

/**
 * The value of a formula in each trial; names without draws stand for their value. NaN where there is none (a root of a
 * negative number in that trial). Undefined where no name of the formula is drawn: its value is the same in all.
 */
export const evaluateDraws = (
  node: Node,
  draws: Draws,
  scope: Readonly<Record<string, Quantity>>,
  functions: Readonly<Record<string, FormulaFunction>>,
): Float64Array | undefined => {
  const names = namesIn(node, functions)
  const drawn = names.flatMap((name) => (draws[name] ? [{ name, values: draws[name] }] : []))
  const [first] = drawn
  if (!first) return undefined
  if (node.type === 'name') return first.values
  const at: Record<string, number> = Object.fromEntries(
    names.flatMap((name) => (scope[name] ? [[name, scope[name].value]] : [])),
  )
  const results = new Float64Array(first.values.length)
  for (let trial = 0; trial < results.length; trial += 1) {
    for (const { name, values } of drawn) at[name] = values[trial] as number
    const result = evaluate(node, at, functions)
    results[trial] = result.ok ? result.value : Number.NaN
  }
  return results
}
