/** Walking over a formula: which names it uses, what it demands, and the same with parts replaced. */
import { refuse } from '../faults.ts'
import type { Result } from '../types.ts'
import { CONSTANTS } from './builtins.ts'
import type { FormulaFunction, Node } from './types.ts'

type Compare = Extract<Node, { type: 'compare' }>

function children(node: Node): readonly Node[] {
  switch (node.type) {
    case 'number':
    case 'name':
      return []
    case 'call':
      return node.args
    case 'minus':
      return [node.of]
    case 'arithmetic':
      return [node.left, node.right]
    case 'compare':
      return node.operands
    case 'and':
      return node.terms
  }
}

/** Names of givens and measures, each once, in the order in which they stand. Constants and words of functions are none. */
export function namesIn(node: Node, functions: Readonly<Record<string, FormulaFunction>> = {}): string[] {
  const names = new Set<string>()
  const visit = (at: Node) => {
    if (at.type === 'name' && !Object.hasOwn(CONSTANTS, at.name)) names.add(at.name)
    const parameters =
      at.type === 'call' && Object.hasOwn(functions, at.name) ? functions[at.name]?.parameters : undefined
    children(at).forEach((child, i) => {
      const isWord = child.type === 'name' && parameters?.[i]?.words?.includes(child.name)
      if (!isWord) visit(child)
    })
  }
  visit(node)
  return [...names]
}

/** Calls of functions, outer ones first. */
export function callsIn(node: Node): Extract<Node, { type: 'call' }>[] {
  const inner = children(node).flatMap(callsIn)
  return node.type === 'call' ? [node, ...inner] : inner
}

/** The comparisons of a criterion, joined by `and`. What compares nothing is a fault. */
export function conjuncts(node: Node): Result<Compare[]> {
  const found: Compare[] = []
  for (const term of node.type === 'and' ? node.terms : [node]) {
    if (term.type === 'and') {
      const inner = conjuncts(term)
      if (!inner.ok) return inner
      found.push(...inner.value)
    } else if (term.type === 'compare') {
      found.push(term)
    } else {
      const hint = 'say which values are accepted, as in `leak_rate < 6 cm^3/min`'
      return refuse(
        'formula/not-a-criterion',
        'a criterion compares a value with its limit',
        term.start,
        term.end,
        { hint },
      )
    }
  }
  return { ok: true, value: found }
}

/** The formula with some nodes replaced, from the outside in; where `replace` gives null, the node stays. */
export function rewrite(node: Node, replace: (node: Node) => Node | null): Node {
  const other = replace(node)
  if (other) return other
  const inner = (child: Node) => rewrite(child, replace)
  switch (node.type) {
    case 'number':
    case 'name':
      return node
    case 'call':
      return { ...node, args: node.args.map(inner) }
    case 'minus':
      return { ...node, of: inner(node.of) }
    case 'arithmetic':
      return { ...node, left: inner(node.left), right: inner(node.right) }
    case 'compare':
      return { ...node, operands: node.operands.map(inner) }
    case 'and':
      return { ...node, terms: node.terms.map(inner) }
  }
}
