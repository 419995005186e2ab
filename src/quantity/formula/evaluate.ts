/** The value of a formula as a number. */
import type { Fault, Result } from '../types.ts'
import { builtin, CONSTANTS } from './builtins.ts'
import type { FormulaFunction, Node } from './types.ts'

type Functions = Readonly<Record<string, FormulaFunction>>

/**
 * Numbers in SI in, a number in SI out. Dimensions are not looked at: `dimensionOf` has done so before.
 * Where there is no value (a division by 0, a root of a negative number, a function outside its range), a fault
 * `formula/no-value` says why.
 */
export function evaluate(
  node: Node,
  scope: Readonly<Record<string, number>>,
  functions: Functions = {},
): Result<number> {
  let fault: Fault | null = null
  const fail = (at: Node, message: string): number => {
    fault ??= { code: 'formula/no-value', message, start: at.start, end: at.end }
    return Number.NaN
  }
  /** Only the innermost reason is told: what is computed from nothing is nothing, too. */
  const checked = (at: Node, value: number, message: string) =>
    Number.isFinite(value) ? value : fail(at, message)

  const of = (at: Node): number => {
    switch (at.type) {
      case 'number':
        return at.value
      case 'name': {
        const value = Object.hasOwn(scope, at.name) ? scope[at.name] : CONSTANTS[at.name]?.value
        return checked(at, value ?? Number.NaN, `\`${at.name}\` has no value`)
      }
      case 'minus':
        return -of(at.of)
      case 'arithmetic': {
        const [left, right] = [of(at.left), of(at.right)]
        if (at.op === '/' && right === 0) return fail(at, 'it would be divided by 0')
        return checked(at, arithmetic(at.op, left, right), 'the result is no number')
      }
      case 'call':
        return call(at)
      default:
        return fail(at, 'a comparison gives no number')
    }
  }

  const call = (at: Extract<Node, { type: 'call' }>): number => {
    const own = Object.hasOwn(functions, at.name) ? functions[at.name] : undefined
    if (own) {
      const args = at.args.map((arg, i) =>
        arg.type === 'name' && own.parameters[i]?.words?.includes(arg.name) ? arg.name : of(arg),
      )
      if (fault) return Number.NaN
      const value = own.evaluate(...args)
      return typeof value === 'string'
        ? fail(at, value)
        : checked(at, value, `\`${at.name}\` has no value here`)
    }
    const known = builtin(at.name)
    if (!known) return fail(at, `there is no function \`${at.name}\``)
    return checked(at, known.evaluate(...at.args.map(of)), `\`${at.name}\` has no value here`)
  }

  const value = of(node)
  return fault ? { ok: false, error: [fault] } : { ok: true, value }
}

function arithmetic(op: '+' | '-' | '*' | '/' | '^', left: number, right: number): number {
  switch (op) {
    case '+':
      return left + right
    case '-':
      return left - right
    case '*':
      return left * right
    case '/':
      return left / right
    case '^':
      return left ** right
  }
}
