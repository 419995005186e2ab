/** Reading a number as people write it, without guessing: no decimal comma, no thousands separators. */
import type { Fault, Result } from './types.ts'

export type NumberText = {
  readonly value: number
  /** The mantissa's figures behind the point, less the exponent: `27.50` → 2, `1e3` → −3. */
  readonly places: number
  readonly length: number
}

const NUMBER = /^[+-]?(?:\d+\.?(\d*)|\.(\d+))(?:[eE]([+-]?\d+)(?![A-Za-z]))?/
const GROUPED = /^[+-]?\d{1,3}(?:[ '’_\u00a0\u202f]\d{3})+(?!\d)|^[+-]?\d+_\d+/
const COMMA = /^[+-]?\d+(?:,\d+)+(?:\.\d+)?|^[+-]?,\d+/

function refused(code: string, message: string, found: string, hint: string): Result<never> {
  const fault: Fault = { code, message, start: 0, end: found.length, hint }
  return { ok: false, error: [fault] }
}

/** The number at the start of a text; null where none stands there. Unicode minus is a minus. */
export function readNumber(text: string): Result<NumberText> | null {
  const plain = text.replace(/−/g, '-')
  const comma = COMMA.exec(plain)?.[0]
  if (comma) {
    const several = /,\d{3}(?:,|\.|$)/.test(comma)
    const hint = several
      ? `write \`${comma.replaceAll(',', '')}\` or \`${comma.replace(',', '.')}\`, whichever is meant`
      : `write \`${comma.replace(',', '.')}\``
    return refused(
      'quantity/decimal-comma',
      `\`${comma}\` has a comma; the decimal sign is a point`,
      comma,
      hint,
    )
  }
  const grouped = GROUPED.exec(plain)?.[0]
  if (grouped) {
    const hint = `write \`${grouped.replace(/[^\d+-]/g, '')}\``
    return refused('quantity/thousands', `\`${grouped}\` has separators between its figures`, grouped, hint)
  }
  const match = NUMBER.exec(plain)
  if (!match) return null
  const value = Number(match[0])
  if (!Number.isFinite(value)) {
    return refused(
      'quantity/syntax',
      `\`${match[0]}\` is too large for a number`,
      match[0],
      'use a larger unit',
    )
  }
  const places = (match[1] ?? match[2] ?? '').length - Number(match[3] ?? 0)
  return { ok: true, value: { value, places, length: match[0].length } }
}
