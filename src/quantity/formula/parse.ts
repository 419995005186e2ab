/**
 * Text → nodes. mathjs's parser knows precedence and brackets; the nodes it builds are ours, so what is not among
 * them cannot be built. Operands reach it as `x0`, `x1` …, named after their token: that keeps their place, and no
 * name of a measure can collide with a word of the parser's own.
 */
import { refuse } from '../faults.ts'
import type { Result } from '../types.ts'
import { draftClasses } from './drafts.ts'
import { type Token, tokenize } from './tokens.ts'
import type { Node } from './types.ts'

type Parser = typeof import('../../../node_modules/mathjs/lib/esm/expression/parse.js')

let createParse: Parser['createParse'] | null = null

/** Loads the parser, so only where formulas are read. `parseFormula` works once this has settled. */
export async function prepareFormulas(): Promise<void> {
  createParse ??= (await import('../../../node_modules/mathjs/lib/esm/expression/parse.js')).createParse
}

/** What the factory asks for beside the nodes. Numbers never get there: they are `x…` as well. */
const SURROUNDINGS = {
  typed: Object.assign((_: string, signatures: Readonly<Record<string, unknown>>) => signatures.string, {
    addConversion: () => undefined,
  }),
  numeric: Number,
  config: { number: 'number' },
}

/** The text that the parser gets, and for each of its characters the token that it stands for. */
function placeholders(tokens: readonly Token[]): {
  readonly text: string
  readonly owner: readonly number[]
} {
  const words = tokens.map((token, i) => (token.kind === 'sign' ? ` ${token.sign} ` : `x${i}`))
  return { text: words.join(''), owner: words.flatMap((word, i) => Array.from(word, () => i)) }
}

/** A bracket without its partner. */
function bracketFault(tokens: readonly Token[]): Token | undefined {
  const open: Token[] = []
  for (const token of tokens) {
    if (token.kind !== 'sign') continue
    if (token.sign === '(') open.push(token)
    if (token.sign === ')' && !open.pop()) return token
  }
  return open.at(-1)
}

/** Reads a formula. Faults carry offsets into `text`: `formula/syntax`, `formula/not-allowed`, `unit/…`. */
export function parseFormula(text: string): Result<Node> {
  if (!createParse) throw new Error('prepareFormulas() must have settled before parseFormula is called')
  const read = tokenize(text)
  if (!read.ok) return read
  const tokens = read.value
  if (tokens.length === 0) return refuse('formula/syntax', 'the formula is empty', 0, text.length)
  const bracket = bracketFault(tokens)
  if (bracket) return refuse('formula/syntax', 'a bracket has no partner', bracket.start, bracket.end)
  const { text: placed, owner } = placeholders(tokens)
  try {
    return { ok: true, value: createParse({ ...SURROUNDINGS, ...draftClasses(tokens) })(placed).node }
  } catch (error) {
    const character = error instanceof SyntaxError && 'char' in error ? Number(error.char) - 1 : placed.length
    const token = tokens[owner[Math.min(character, placed.length - 1)] ?? tokens.length - 1]
    return unexpected(text, character >= placed.trimEnd().length ? undefined : token)
  }
}

function unexpected(text: string, token: Token | undefined) {
  if (!token)
    return refuse(
      'formula/syntax',
      'the formula ends where a value is missing',
      text.trimEnd().length,
      text.length,
    )
  const shown = text.slice(token.start, token.end)
  const hint =
    shown === ','
      ? 'the decimal sign is a point; commas stand between the arguments of a function'
      : undefined
  return refuse('formula/syntax', `\`${shown}\` cannot stand here`, token.start, token.end, { hint })
}
