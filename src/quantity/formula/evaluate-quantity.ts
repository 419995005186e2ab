/** The value of a formula as a quantity with its budget. */
import { propagate } from '../combine.ts'
import { refuse } from '../faults.ts'
import type { Dimension, Quantity, Result } from '../types.ts'
import { dimensionOf } from './dimension-of.ts'
import { evaluate } from './evaluate.ts'
import { namesIn } from './names.ts'
import type { FormulaFunction, Node } from './types.ts'

type Functions = Readonly<Record<string, FormulaFunction>>

/** Value, dimension and budget: first-order propagation over all names that the formula uses. */
export function evaluateQuantity(
  node: Node,
  scope: Readonly<Record<string, Quantity>>,
  functions: Functions = {},
): Result<Quantity> {
  if (node.type === 'compare' || node.type === 'and') {
    return refuse('formula/not-allowed', 'a comparison gives no quantity', node.start, node.end)
  }
  const alone = node.type === 'name' && Object.hasOwn(scope, node.name) ? scope[node.name] : undefined
  if (alone) return { ok: true, value: alone }
  const names = namesIn(node, functions)
  const dims: Record<string, Dimension> = {}
  for (const name of names) {
    const dim = Object.hasOwn(scope, name) ? scope[name]?.dim : undefined
    if (dim) dims[name] = dim
  }
  const dim = dimensionOf(node, dims, functions)
  if (!dim.ok) return refused(node, scope, functions)
  const inputs = names.flatMap((name) => scope[name] ?? [])
  const at = (values: readonly number[]) =>
    Object.fromEntries(names.map((name, i) => [name, values[i] ?? Number.NaN]))
  const middle = evaluate(node, at(inputs.map((q) => q.value)), functions)
  if (!middle.ok) return middle
  const f = (values: number[]) => {
    const result = evaluate(node, at(values), functions)
    return result.ok ? result.value : Number.NaN
  }
  return { ok: true, value: propagate(f, inputs, dim.value) }
}

/** The same check against the whole scope, so that a misspelt name finds what is near. */
function refused(node: Node, scope: Readonly<Record<string, Quantity>>, functions: Functions): Result<never> {
  const dims = Object.fromEntries(Object.entries(scope).map(([name, q]) => [name, q.dim]))
  const dim = dimensionOf(node, dims, functions)
  return dim.ok ? refuse('formula/no-value', 'the formula has no value here', node.start, node.end) : dim
}
