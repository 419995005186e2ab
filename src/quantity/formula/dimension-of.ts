/** Checks a formula against the names and functions in scope, and says what kind of quantity it gives. */
import {
  aKind,
  DIMENSIONLESS,
  divideDimension,
  multiplyDimension,
  powerDimension,
  sameDimension,
} from '../dimension.ts'
import { refuse } from '../faults.ts'
import { KINDS } from '../kinds.ts'
import { nearest } from '../nearest.ts'
import type { Dimension, Result } from '../types.ts'
import { isUnitName } from '../unit-names.ts'
import { BUILTINS, builtin, CONSTANTS } from './builtins.ts'
import { evaluate } from './evaluate.ts'
import { namesIn } from './names.ts'
import type { FormulaFunction, Node } from './types.ts'

type Call = Extract<Node, { type: 'call' }>
type Arithmetic = Extract<Node, { type: 'arithmetic' }>
type Found = Result<Dimension>

/**
 * The dimension of a formula; of a comparison, after checking its sides, a pure number.
 * Faults: `formula/unknown-name`, `formula/unknown-function`, `formula/arguments`, `formula/dimension-mismatch`,
 * `formula/not-allowed`.
 */
export function dimensionOf(
  node: Node,
  scope: Readonly<Record<string, Dimension>>,
  functions: Readonly<Record<string, FormulaFunction>> = {},
): Found {
  const of = (inner: Node): Found => dimensionOf(inner, scope, functions)
  switch (node.type) {
    case 'number':
      return { ok: true, value: node.dim }
    case 'name':
      return nameDimension(node, scope)
    case 'call':
      return callDimension(node, functions, of)
    case 'minus':
      return number(node.of, of)
    case 'arithmetic':
      return arithmeticDimension(node, of)
    case 'compare':
      return oneWay(node) ?? alike(node.operands, of, DIMENSIONLESS)
    case 'and':
      return all(node.terms, of, () => DIMENSIONLESS)
  }
}

/** Dimensions of several nodes, or all their faults. */
function all(
  nodes: readonly Node[],
  of: (node: Node) => Found,
  then: (dims: Dimension[]) => Dimension,
): Found {
  const found = nodes.map(of)
  const faults = found.flatMap((result) => (result.ok ? [] : result.error))
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: then(found.flatMap((result) => (result.ok ? [result.value] : []))) }
}

/** A comparison is true or false: nothing can be computed with it. */
function number(node: Node, of: (node: Node) => Found): Found {
  if (node.type !== 'compare' && node.type !== 'and') return of(node)
  const message = 'a comparison gives no number to compute with'
  return refuse('formula/not-allowed', message, node.start, node.end, {
    hint: 'compare outside the brackets',
  })
}

function nameDimension(
  node: Extract<Node, { type: 'name' }>,
  scope: Readonly<Record<string, Dimension>>,
): Found {
  const dim = Object.hasOwn(scope, node.name) ? scope[node.name] : CONSTANTS[node.name]?.dim
  if (dim) return { ok: true, value: dim }
  const { name, start, end } = node
  const expected = nearest(name, [...Object.keys(scope), ...Object.keys(CONSTANTS)])
  const hint = isUnitName(name)
    ? 'it is a unit: write it right behind its number, as in `6 cm^3/min`'
    : expected.length === 0
      ? `known here: ${Object.keys(scope).join(', ') || 'no names'}`
      : undefined
  return refuse('formula/unknown-name', `\`${name}\` is not known here`, start, end, { expected, hint })
}

function callDimension(
  node: Call,
  functions: Readonly<Record<string, FormulaFunction>>,
  of: (node: Node) => Found,
): Found {
  const own = Object.hasOwn(functions, node.name) ? functions[node.name] : undefined
  if (own) return functionDimension(node, own, of)
  const known = builtin(node.name)
  if (!known) {
    const expected = nearest(node.name, [...Object.keys(functions), ...Object.keys(BUILTINS)])
    return refuse('formula/unknown-function', `there is no function \`${node.name}\``, node.start, node.end, {
      expected,
    })
  }
  if (node.args.length < known.least || node.args.length > known.most) return wrongCount(node, known.least)
  let misfit = ''
  const found = all(
    node.args,
    (arg) => number(arg, of),
    (dims) => {
      const dim = known.dimension(dims)
      if (typeof dim !== 'string') return dim
      misfit = dim
      return DIMENSIONLESS
    },
  )
  if (misfit) return refuse('formula/dimension-mismatch', `\`${node.name}\` ${misfit}`, node.start, node.end)
  return found
}

function wrongCount(node: Call, wanted: number, example?: string) {
  const message = `\`${node.name}\` takes ${wanted} ${wanted === 1 ? 'value' : 'values'}, not ${node.args.length}`
  return refuse('formula/arguments', message, node.start, node.end, {
    hint: example && `for example \`${example}\``,
  })
}

function functionDimension(node: Call, own: FormulaFunction, of: (node: Node) => Found): Found {
  if (node.args.length !== own.parameters.length)
    return wrongCount(node, own.parameters.length, own.example.formula)
  const dims: Dimension[] = []
  for (const [i, parameter] of own.parameters.entries()) {
    const arg = node.args[i]
    if (!arg) continue
    const isWord = arg.type === 'name' && parameter.words?.includes(arg.name)
    if (isWord) continue
    if (parameter.words && parameter.kind === 'text') {
      const near = arg.type === 'name' ? nearest(arg.name, parameter.words) : []
      const expected = near.length > 0 ? near : parameter.words
      const message = `\`${parameter.name}\` of \`${node.name}\` must be one of its words`
      return refuse('formula/arguments', message, arg.start, arg.end, { expected })
    }
    const dim = number(arg, of)
    if (!dim.ok) return dim
    dims.push(dim.value)
    if (parameter.kind === 'any' || sameDimension(dim.value, KINDS[parameter.kind].dim)) continue
    const message = `\`${parameter.name}\` of \`${node.name}\` is ${aKind(KINDS[parameter.kind].dim)}, not ${aKind(dim.value)}`
    return refuse('formula/dimension-mismatch', message, arg.start, arg.end)
  }
  return {
    ok: true,
    value: own.result === 'same-as-first' ? (dims[0] ?? DIMENSIONLESS) : KINDS[own.result].dim,
  }
}

function arithmeticDimension(node: Arithmetic, of: (node: Node) => Found): Found {
  const { op, left, right } = node
  const operand = (inner: Node) => number(inner, of)
  if (op === '+' || op === '-') return alike([left, right], operand)
  if (op === '^') return powerOf(node, operand)
  return all([left, right], operand, ([a = DIMENSIONLESS, b = DIMENSIONLESS]) =>
    op === '*' ? multiplyDimension(a, b) : divideDimension(a, b),
  )
}

function powerOf({ left, right }: Arithmetic, of: (node: Node) => Found): Found {
  const [base, exponent] = [of(left), of(right)]
  if (!base.ok) return base
  if (!exponent.ok) return exponent
  if (!sameDimension(exponent.value, DIMENSIONLESS)) {
    const message = `an exponent is a pure number, not ${aKind(exponent.value)}`
    return refuse('formula/dimension-mismatch', message, right.start, right.end)
  }
  if (sameDimension(base.value, DIMENSIONLESS)) return base
  const constant = namesIn(right).length === 0 ? evaluate(right, {}) : null
  if (constant?.ok) return { ok: true, value: powerDimension(base.value, constant.value) }
  const message = `the exponent of ${aKind(base.value)} must be written as a number`
  return refuse('formula/dimension-mismatch', message, right.start, right.end)
}

/** All nodes of one dimension, which is that of the whole unless another is given. */
function alike(nodes: readonly Node[], of: (node: Node) => Found, result?: Dimension): Found {
  let dims: Dimension[] = []
  const found = all(
    nodes,
    (node) => number(node, of),
    (each) => {
      dims = each
      return result ?? each[0] ?? DIMENSIONLESS
    },
  )
  const [first = DIMENSIONLESS] = dims
  const other = dims.find((dim) => !sameDimension(dim, first))
  if (!other) return found
  const message = `${aKind(first)} and ${aKind(other)} can be neither added nor compared`
  const bare = [first, other].some((dim) => sameDimension(dim, DIMENSIONLESS))
  const hint = bare ? 'give the number its unit' : undefined
  return refuse('formula/dimension-mismatch', message, nodes[0]?.start ?? 0, nodes.at(-1)?.end ?? 0, { hint })
}

/** `a < b > c` says nothing that a reader would expect. */
function oneWay(node: Extract<Node, { type: 'compare' }>): Found | null {
  const up = node.ops.filter((op) => op.startsWith('<')).length
  if (up === 0 || up === node.ops.length) return null
  const hint = 'write `low <= value <= high`, or two comparisons joined by `and`'
  return refuse('formula/not-allowed', 'a chain of comparisons goes one way', node.start, node.end, { hint })
}
