/** A formula as text again, and worked out with numbers: `test_pressure * 1.06` → `-2.5 kPa * 1.06`. */
import type { Node } from './types.ts'

const STRENGTH = { and: 1, compare: 2, '+': 3, '-': 3, '*': 4, '/': 4, minus: 5, '^': 6, atom: 7 } as const

/** Text with its binding strength: brackets are set where it stands beside something that binds more. */
type Piece = { readonly text: string; readonly strength: number }

const ON_SCALE = /(?:°|deg)[CF]|[℃℉]/

/** `(5 m)^2` is not `5 m^2`: a unit binds less than a power, and more than a product. */
function literalStrength(text: string): number {
  if (text.startsWith('-')) return STRENGTH.minus
  return /^[\d.]+(?:[eE][-+]?\d+)?$/.test(text) ? STRENGTH.atom : STRENGTH.minus
}

function piece(node: Node, name: (name: string) => string): Piece {
  const inside = (child: Node, least: number): string => {
    const { text, strength } = piece(child, name)
    return strength < least ? `(${text})` : text
  }
  switch (node.type) {
    case 'number':
      return { text: node.text, strength: literalStrength(node.text) }
    case 'name': {
      const text = name(node.name)
      // A value in the place of the name: `2.5 ± 0.1 kPa` binds like a sum.
      if (text.includes('±')) return { text, strength: STRENGTH['+'] }
      return {
        text,
        strength: /^[-−\d]/.test(text) ? literalStrength(text.replace('−', '-')) : STRENGTH.atom,
      }
    }
    case 'call':
      return {
        text: `${node.name}(${node.args.map((arg) => inside(arg, 0)).join(', ')})`,
        strength: STRENGTH.atom,
      }
    case 'minus': {
      // `-5 kPa` needs no brackets; `-(40 degC)` does, since -40 degC is a point on the scale.
      const bare = node.of.type === 'number' && /^[\d.]/.test(node.of.text) && !ON_SCALE.test(node.of.text)
      return {
        text: `-${bare ? node.of.text : inside(node.of, STRENGTH.minus + 1)}`,
        strength: STRENGTH.minus,
      }
    }
    case 'compare': {
      const [first, ...others] = node.operands.map((operand) => inside(operand, STRENGTH.compare + 1))
      return {
        text: [first, ...others.map((other, i) => `${node.ops[i]} ${other}`)].join(' '),
        strength: STRENGTH.compare,
      }
    }
    case 'and':
      return {
        text: node.terms.map((term) => inside(term, STRENGTH.and + 1)).join(' and '),
        strength: STRENGTH.and,
      }
    case 'arithmetic': {
      const strength = STRENGTH[node.op]
      if (node.op === '^')
        return { text: `${inside(node.left, strength + 1)}^${inside(node.right, strength)}`, strength }
      // A minus may open a sum, but not stand behind an operator.
      const right = piece(node.right, name)
      const wrapped = right.strength <= strength || /^[-−]/.test(right.text) ? `(${right.text})` : right.text
      return { text: `${inside(node.left, strength)} ${node.op} ${wrapped}`, strength }
    }
  }
}

export function formatNode(node: Node): string {
  return piece(node, (name) => name).text
}

/** The formula with a text in the place of each name. */
export function substitute(node: Node, text: (name: string) => string): string {
  return piece(node, text).text
}
