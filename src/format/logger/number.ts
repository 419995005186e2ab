/** Numbers read straight from the text, to the same last bit as `Number` gives for the same digits. */

/** What `readNumber` says beside the value. One object serves a whole file. */
export type NumberSeen = {
  /** Power of ten of the last digit written: `27.50` gives −2. */
  power: number
}

const MINUS = 45
const PLUS = 43
/** The minus of typography. */
const LONG_MINUS = 0x2212
const LARGEST_EXACT = 2 ** 53
const POWERS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))

/**
 * The value of `[start, end)`, NaN where that is no number. Up to 2⁵³ for the figures and 10²² for the power both
 * are exact, so that one multiplication or division rounds rightly (Clinger, “How to read floating point numbers
 * accurately”, 1990); beyond, `Number` does it.
 */
export function readNumber(
  text: string,
  start: number,
  end: number,
  decimal: number,
  seen: NumberSeen,
): number {
  let at = start
  const sign = text.charCodeAt(at)
  if (sign === MINUS || sign === PLUS || sign === LONG_MINUS) at++
  let figures = 0
  let digits = 0
  let places = 0
  let point = false
  for (; at < end; at++) {
    const code = text.charCodeAt(at)
    const figure = code - 48
    if (figure >= 0 && figure <= 9) {
      figures = figures * 10 + figure
      digits++
      if (point) places++
    } else if (code === decimal && !point) point = true
    else break
  }
  if (digits === 0) return Number.NaN
  let exponent = 0
  if (at < end) {
    exponent = exponentAt(text, at, end)
    if (Number.isNaN(exponent)) return Number.NaN
  }
  const power = exponent - places
  seen.power = power
  const size =
    figures <= LARGEST_EXACT && power >= -22 && power <= 22
      ? power < 0
        ? figures / (POWERS[-power] as number)
        : figures * (POWERS[power] as number)
      : slowly(text.slice(sign === MINUS || sign === PLUS || sign === LONG_MINUS ? start + 1 : start, end))
  if (!Number.isFinite(size)) return Number.NaN
  return sign === MINUS || sign === LONG_MINUS ? -size : size
}

const slowly = (text: string) => Number(text.replace(',', '.'))

/** `E+03` from its letter to the end; NaN where something else stands there. */
function exponentAt(text: string, start: number, end: number): number {
  const letter = text.charCodeAt(start)
  if (letter !== 69 && letter !== 101) return Number.NaN
  let at = start + 1
  const sign = text.charCodeAt(at)
  if (sign === MINUS || sign === PLUS) at++
  if (at >= end) return Number.NaN
  let value = 0
  for (; at < end; at++) {
    const figure = text.charCodeAt(at) - 48
    if (!(figure >= 0 && figure <= 9)) return Number.NaN
    value = value * 10 + figure
  }
  return sign === MINUS ? -value : value
}
