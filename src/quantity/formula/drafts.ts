/** The node classes that mathjs's parser is given: it can build nothing else. */
import type { Token } from './tokens.ts'
import type { Comparison, Node } from './types.ts'

/** The parser asks its nodes who they are before it reads a bracket as a call; that is all it learns of them. */
export class Draft {
  readonly node: Node
  readonly isSymbolNode: boolean
  constructor(node: Node, isSymbolNode = false) {
    this.node = node
    this.isSymbolNode = isSymbolNode
  }
  get isNode() {
    return true
  }
}

const COMPARISONS: Readonly<Record<string, Comparison>> = {
  '<': '<',
  '<=': '<=',
  '>': '>',
  '>=': '>=',
  smaller: '<',
  smallerEq: '<=',
  larger: '>',
  largerEq: '>=',
}

/** Functions that the parser calls with `new`; made for one formula, whose tokens the names `x0`, `x1` … stand for. */
export function draftClasses(tokens: readonly Token[]): Readonly<Record<string, unknown>> {
  const ends = callEnds(tokens)

  function SymbolNode(placeholder: string): Draft {
    const index = Number(placeholder.slice(1))
    const token = tokens[index]
    if (!token || token.kind === 'sign') return notAllowed()
    const { start, end } = token
    if (token.kind === 'number') {
      return new Draft({ type: 'number', value: token.value, dim: token.dim, text: token.text, start, end })
    }
    return new Draft({ type: 'name', name: token.name, start, end: ends.get(start) ?? end }, true)
  }

  function OperatorNode(op: string, _: string, args: readonly Draft[]): Draft {
    const [left, right] = args.map((arg) => arg.node)
    if (!left) return notAllowed()
    if (!right) {
      if (op === '-')
        return new Draft({ type: 'minus', of: left, start: Math.max(0, left.start - 1), end: left.end })
      return op === '+' && args[0] ? args[0] : notAllowed()
    }
    const at = { start: left.start, end: right.end }
    if (op === '+' || op === '-' || op === '*' || op === '/' || op === '^') {
      return new Draft({ type: 'arithmetic', op, left, right, ...at })
    }
    if (op === 'and') {
      return new Draft({ type: 'and', terms: [...(left.type === 'and' ? left.terms : [left]), right], ...at })
    }
    return compare([op], [left, right])
  }

  function RelationalNode(ops: readonly string[], operands: readonly Draft[]): Draft {
    return compare(
      ops,
      operands.map((operand) => operand.node),
    )
  }

  function FunctionNode(name: Draft, args: readonly Draft[]): Draft {
    if (name.node.type !== 'name') return notAllowed()
    const { name: called, start, end } = name.node
    return new Draft({ type: 'call', name: called, args: args.map((arg) => arg.node), start, end })
  }

  function ParenthesisNode(content: Draft): Draft {
    return new Draft(content.node)
  }

  return {
    ...Object.fromEntries(NOT_AMONG_THEM.map((name) => [name, notAllowed])),
    SymbolNode,
    OperatorNode,
    RelationalNode,
    FunctionNode,
    ParenthesisNode,
  }
}

const NOT_AMONG_THEM = [
  'AccessorNode',
  'ArrayNode',
  'AssignmentNode',
  'BlockNode',
  'ConditionalNode',
  'ConstantNode',
  'FunctionAssignmentNode',
  'IndexNode',
  'ObjectNode',
  'RangeNode',
]

function notAllowed(): never {
  throw new SyntaxError('not a part of formulas')
}

function compare(ops: readonly string[], operands: readonly Node[]): Draft {
  const known = ops.map((op) => COMPARISONS[op] ?? notAllowed())
  const [first, last] = [operands[0], operands.at(-1)]
  if (!first || !last) return notAllowed()
  return new Draft({ type: 'compare', ops: known, operands, start: first.start, end: last.end })
}

/** By the start of a called name: where the bracket behind its arguments ends. */
function callEnds(tokens: readonly Token[]): ReadonlyMap<number, number> {
  const ends = new Map<number, number>()
  const open: (number | null)[] = []
  tokens.forEach((token, i) => {
    if (token.kind !== 'sign') return
    const before = tokens[i - 1]
    if (token.sign === '(') open.push(before?.kind === 'name' ? before.start : null)
    const start = token.sign === ')' ? open.pop() : null
    if (start !== null && start !== undefined) ends.set(start, token.end)
  })
  return ends
}
