/** Numbers as people type them: with a decimal comma, with groups of three, with a typographic minus. */

export type TypedNumber =
  /** As the file writes it; the digits are kept. */
  | { readonly is: 'number'; readonly text: string; readonly changed: boolean }
  /** `1,234`: one and a bit, or one thousand and more. Whoever typed it must say. */
  | { readonly is: 'ambiguous'; readonly decimal: string; readonly grouped: string }
  | { readonly is: 'other' }

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/
const COMMA_ONLY = /^([+-]?)(\d*),(\d+)((?:[eE][+-]?\d+)?)$/
/** `1,234,567.8` and `1.234.567,8`: the last sign that stands once is the decimal one. */
const GROUPS_COMMA = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/
const GROUPS_POINT = /^[+-]?\d{1,3}(?:\.\d{3})+,\d*$/
const GROUPS_BLANK = /^[+-]?\d{1,3}(?:[ \u00a0\u202f'’]\d{3})+(?:[.,]\d*)?$/

/** `decimalComma`: said by the person, or seen in the neighbours, that a comma is the decimal sign. */
export const typedNumber = (typed: string, decimalComma?: boolean): TypedNumber => {
  const trimmed = typed.trim()
  const text = trimmed.replace(/^[−–]/, '-')
  const number = (written: string): TypedNumber => ({
    is: 'number',
    text: written,
    changed: written !== trimmed,
  })
  if (PLAIN.test(text)) return number(text)
  const [, , whole = '', part = ''] = COMMA_ONLY.exec(text) ?? []
  const single = COMMA_ONLY.test(text)
  // Three digits behind one to three: only then could the comma stand for thousands. Nobody groups after a 0.
  if (single && part.length === 3 && /^[1-9]\d{0,2}$/.test(whole) && decimalComma === undefined) {
    return { is: 'ambiguous', decimal: text.replace(',', '.'), grouped: text.replace(',', '') }
  }
  if (single && decimalComma !== false) return number(text.replace(',', '.'))
  if (GROUPS_COMMA.test(text)) return number(text.replaceAll(',', ''))
  if (GROUPS_POINT.test(text)) return number(text.replaceAll('.', '').replace(',', '.'))
  if (GROUPS_BLANK.test(text)) return number(text.replace(/[ \u00a0\u202f'’]/g, '').replace(',', '.'))
  return { is: 'other' }
}

/** Whether the cells of a column show that a comma is its decimal sign; undefined where nothing tells. */
export const seenDecimalComma = (cells: readonly string[]): boolean | undefined => {
  const texts = cells.map((cell) => cell.trim().replace(/^[−–]/, '-'))
  const decimal = texts.some((text) => COMMA_ONLY.test(text) && typedNumber(text).is === 'number')
  const grouped = texts.some((text) =>
    /^[+-]?\d{1,3}(?:,\d{3})+\.\d*$|^[+-]?\d{1,3}(?:,\d{3}){2,}$/.test(text),
  )
  const point = texts.some((text) => PLAIN.test(text) && text.includes('.'))
  if (decimal === (grouped || point)) return undefined
  return decimal
}

/** The other sign; a cell with nothing in it begins with a minus. */
export const signTurned = (cell: string): string => {
  const text = cell.trim()
  if (/^[-−–]/.test(text)) return text.slice(1)
  return `-${text.replace(/^\+/, '')}`
}
