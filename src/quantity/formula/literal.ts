/** A number with its unit inside a formula: `6 cm^3/min`, `5 lbf in/deg`, `95 %`, `-40 degC`. */
import { toSI } from '../convert.ts'
import { DIMENSIONLESS } from '../dimension.ts'
import { moveFaults, refuse } from '../faults.ts'
import type { Dimension, Result, Unit } from '../types.ts'
import { insteadOf } from '../unit-hints.ts'
import { isUnitName } from '../unit-names.ts'
import { parseUnit } from '../unit-text.ts'

export type Literal = {
  readonly value: number
  readonly dim: Dimension
  readonly end: number
  /** True where the unit has a zero of its own (°C): a minus before it belongs to the number. */
  readonly onScale: boolean
}

/** One unit as it may stand in a formula, with its exponent. A word with `_` or further figures is a name. */
const UNIT_WORD =
  /^(?:(?:delta )?(?:°[CF]?|deg[CF])(?![A-Za-z0-9_])|(?:US|UK) gal(?![A-Za-z0-9_])|[A-Za-zµμΩ]*H[2₂]O|[A-Za-zµμΩ]+|%)/
const EXPONENT = /^(?:\^[-−]?\d+|⁻?[⁰¹²³⁴⁵⁶⁷⁸⁹]+|[23](?![A-Za-z0-9_.]))/

/** Length of the unit at the start of the text, 0 where none stands there. A word before `(` is a call. */
function unitLength(text: string): number {
  const word = UNIT_WORD.exec(text)?.[0]
  if (
    !word ||
    !isUnitName(
      word
        .replace(/^delta /, 'delta_')
        .replace(/^(US|UK) /, '$1')
        .replace('₂', '2')
        .replace('μ', 'µ'),
    )
  ) {
    return 0
  }
  const exponent = EXPONENT.exec(text.slice(word.length))?.[0] ?? ''
  const rest = text.slice(word.length + exponent.length)
  return /^[A-Za-z0-9_]/.test(rest) || /^\s*\(/.test(rest) ? 0 : word.length + exponent.length
}

/** Signs that carry a unit on: a blank, `·` and `/` anywhere, `*` only where no blanks stand around it. */
const CONTINUED = /^(?:\s*[·⋅]\s*|\*|\s*\/\s*|\s+)/
const GROUP = /^\([^()]*\)/

/** Where the unit that starts at `start` ends. */
function unitEnd(text: string, start: number): number {
  let end = start + unitLength(text.slice(start))
  if (end === start) return start
  for (;;) {
    const sign = CONTINUED.exec(text.slice(end))?.[0]
    if (!sign) return end
    const behind = end + sign.length
    const length = unitLength(text.slice(behind))
    const group = sign.includes('/') && length === 0 ? GROUP.exec(text.slice(behind))?.[0] : undefined
    if (group && parseUnit(group).ok) end = behind + group.length
    else if (length > 0) end = behind + length
    else return end
  }
}

const NUMBER = /^(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+(?![A-Za-z0-9_]))?/
const NO_UNIT = /^(?:and|or|not|xor|mod|to)\b/

/** The number at `start`, with its unit where one follows. */
export function readLiteral(text: string, start: number, negative: boolean): Result<Literal> {
  const digits = NUMBER.exec(text.slice(start))?.[0] ?? ''
  const behind = start + digits.length
  if (text[behind] === '_' || text[behind] === '.') {
    const hint = 'write the number without separators'
    return refuse(
      'formula/syntax',
      `\`${text.slice(start, behind + 1)}\` is not a number`,
      start,
      behind + 1,
      { hint },
    )
  }
  const value = Number(digits)
  if (!Number.isFinite(value))
    return refuse('formula/syntax', `\`${digits}\` is too large for a number`, start, behind)
  const unitStart = behind + (/^\s*/.exec(text.slice(behind))?.[0].length ?? 0)
  const rest = text.slice(unitStart)
  const end = unitEnd(text, unitStart)
  if (end === unitStart) {
    const word = /^[A-Za-zµ°Ω][A-Za-z0-9_°]*/.exec(rest)?.[0]
    if (word && !NO_UNIT.test(rest) && !isUnitName(word)) {
      return refuse(
        'unit/unknown',
        `\`${word}\` is not a unit`,
        unitStart,
        unitStart + word.length,
        insteadOf(word),
      )
    }
    return { ok: true, value: { value, dim: DIMENSIONLESS, end: behind, onScale: false } }
  }
  const unit = parseUnit(text.slice(unitStart, end))
  if (!unit.ok) return moveFaults(unit, unitStart)
  return { ok: true, value: literal(negative ? -value : value, unit.value, negative, end) }
}

function literal(value: number, unit: Unit, negative: boolean, end: number): Literal {
  const onScale = unit.offset !== 0
  // Only on a temperature scale is −(x) not (−x): everywhere else the minus stays an operator.
  return { value: toSI(onScale || !negative ? value : -value, unit), dim: unit.dim, end, onScale }
}
