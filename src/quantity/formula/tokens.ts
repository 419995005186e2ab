/**
 * The words of a formula, each with its place. Whatever is not among them is refused here, in words, before the
 * parser sees it. Implicit multiplication exists only between a number and its unit.
 */
import { refuse } from '../faults.ts'
import type { Dimension, Result } from '../types.ts'
import { readLiteral } from './literal.ts'

export type Token = { readonly start: number; readonly end: number } & (
  | { readonly kind: 'number'; readonly value: number; readonly dim: Dimension; readonly text: string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'sign'; readonly sign: string }
)

const NAME = /^[A-Za-z][A-Za-z0-9_]*/
const SIGN = /^(?:<=|>=|[-+*/^(),<>≤≥−·×])/
const SAME_SIGN: Readonly<Record<string, string>> = { '≤': '<=', '≥': '>=', '−': '-', '·': '*', '×': '*' }
const REFUSED_WORDS = new Set(['or', 'not', 'xor', 'mod', 'to'])

/** A sentence for each thing that formulas elsewhere have and these have not. */
const REFUSED_SIGNS: readonly (readonly [RegExp, string, string?])[] = [
  [/^(==|!=)/, 'a value with uncertainty is never equal to another', 'compare with `<`, `<=`, `>` or `>=`'],
  [/^=/, 'nothing can be assigned in a formula', 'compare with `<`, `<=`, `>` or `>=`'],
  [/^(\|\|?|!|~)/, 'only `and` joins comparisons', 'make a criterion of each alternative'],
  [/^&&?/, 'comparisons are joined with the word `and`', 'write `and`'],
  [/^["'`]/, 'a formula has no texts'],
  [/^#/, 'a formula has no comments', 'put the explanation into `why`'],
  [/^[[\]{}]/, 'a formula has no lists', 'use round brackets'],
  [/^\./, 'nothing has properties in a formula'],
  [/^;/, 'a formula is one expression'],
  [/^[?:]/, 'a formula has no conditions', 'join comparisons with `and`'],
  [/^%/, '`%` stands only behind a number', 'write it as in `95 %`'],
]

/** Far more than anybody can read; and the parser's own depth is limited by the stack. */
const MOST_TOKENS = 400

export function tokenize(text: string): Result<Token[]> {
  const tokens: Token[] = []
  let at = 0
  while (at < text.length) {
    const rest = text.slice(at)
    const blanks = /^\s+/.exec(rest)?.[0].length ?? 0
    if (blanks > 0) {
      at += blanks
      continue
    }
    const read = readToken(text, at, tokens)
    if (!read.ok) return read
    tokens.push(read.value)
    at = read.value.end
    if (tokens.length > MOST_TOKENS) {
      return refuse('formula/syntax', 'the formula is too long', at, text.length, {
        hint: 'split it with `derive`',
      })
    }
  }
  const doubtful = doubtfulFraction(tokens)
  if (doubtful) {
    const { start, end } = doubtful
    const hint =
      'write the fraction as a decimal number, or blanks around the stroke where a division is meant'
    const message = `\`${text.slice(start, end)}\` can be meant in two ways`
    return refuse('formula/syntax', message, start, end, { hint })
  }
  const missing = missingOperator(tokens)
  if (!missing) return { ok: true, value: tokens }
  const [left, right] = missing
  const shown = `\`${text.slice(left.start, left.end)}\` and \`${text.slice(right.start, right.end)}\``
  const message = `an operator is missing between ${shown}`
  return refuse('formula/syntax', message, left.start, right.end, { expected: ['+', '-', '*', '/'] })
}

function readToken(text: string, at: number, before: Token[]): Result<Token> {
  const rest = text.slice(at)
  if (/^\.?\d/.test(rest)) {
    const sign = before.at(-1)
    const negative = sign?.kind === 'sign' && sign.sign === '-' && !endsOperand(before.at(-2))
    const read = readLiteral(text, at, negative)
    if (!read.ok) return read
    const { value, dim, end, onScale } = read.value
    // −40 °C is 233.15 K, not −313.15 K: the minus is part of the number.
    const start = negative && onScale ? (before.pop()?.start ?? at) : at
    return {
      ok: true,
      value: {
        kind: 'number',
        value,
        dim,
        text: text.slice(start, end),
        start,
        end,
      },
    }
  }
  const name = NAME.exec(rest)?.[0]
  if (name && REFUSED_WORDS.has(name)) {
    const hint = 'formulas know `and`, comparisons and arithmetic'
    return refuse('formula/not-allowed', `\`${name}\` has no meaning in a formula`, at, at + name.length, {
      hint,
    })
  }
  if (name === 'and') return { ok: true, value: { kind: 'sign', sign: 'and', start: at, end: at + 3 } }
  if (name) return { ok: true, value: { kind: 'name', name, start: at, end: at + name.length } }
  for (const [pattern, message, hint] of REFUSED_SIGNS) {
    const found = pattern.exec(rest)?.[0]
    if (found) return refuse('formula/not-allowed', message, at, at + found.length, { hint })
  }
  if (rest.startsWith('**'))
    return refuse('formula/syntax', 'a power is written `^`', at, at + 2, { expected: ['^'] })
  const sign = SIGN.exec(rest)?.[0]
  if (sign)
    return {
      ok: true,
      value: { kind: 'sign', sign: SAME_SIGN[sign] ?? sign, start: at, end: at + sign.length },
    }
  const character = String.fromCodePoint(rest.codePointAt(0) ?? 0)
  return refuse('formula/syntax', `\`${character}\` has no meaning in a formula`, at, at + character.length)
}

function endsOperand(token: Token | undefined): boolean {
  return token !== undefined && (token.kind !== 'sign' || token.sign === ')')
}

function startsOperand(token: Token): boolean {
  return token.kind !== 'sign' || token.sign === '('
}

/** The first two operands side by side. A name before a bracket is a call. */
function missingOperator(tokens: readonly Token[]): readonly [Token, Token] | undefined {
  for (let i = 1; i < tokens.length; i++) {
    const [left, right] = [tokens[i - 1], tokens[i]]
    if (!left || !right || !endsOperand(left) || !startsOperand(right)) continue
    const call = left.kind === 'name' && right.kind === 'sign'
    if (!call) return [left, right]
  }
  return undefined
}

/** `1/2 in`: half an inch, or one divided by two inches? */
function doubtfulFraction(
  tokens: readonly Token[],
): { readonly start: number; readonly end: number } | undefined {
  for (let i = 2; i < tokens.length; i++) {
    const [above, stroke, below] = [tokens[i - 2], tokens[i - 1], tokens[i]]
    if (above?.kind !== 'number' || stroke?.kind !== 'sign' || below?.kind !== 'number') continue
    const tight = stroke.sign === '/' && above.end === stroke.start && stroke.end === below.start
    const bare = /^[\d.]+$/.test(above.text)
    if (tight && bare && !/^[\d.eE+-]+$/.test(below.text)) return { start: above.start, end: below.end }
  }
  return undefined
}
