/** Numbers for people and for JSON: no locale, no float's tail, no more figures than the uncertainty allows. */
import { toUnit, toUnitDifference } from './convert.ts'
import { superscript } from './dimension.ts'
import { KINDS, type Kind } from './kinds.ts'
import { expanded } from './quantity.ts'
import type { Quantity, Unit } from './types.ts'
import { parseUnit } from './unit-text.ts'

export { toUnit, toUnitDifference } from './convert.ts'

/** A minus as it is printed; JSON and files keep the hyphen. */
export function printed(text: string): string {
  return text.replace(/-/g, '−')
}

/** The power of ten of the first figure: 0.0042 → −3. */
function magnitude(x: number): number {
  return Number(x.toExponential().split('e')[1])
}

/** x · 10^by through its decimal text, where a multiplication would leave a tail. */
function shift(x: number, by: number): number {
  const [digits, exponent = '0'] = String(x).split('e')
  return Number(`${digits}e${Number(exponent) + by}`)
}

/** x rounded to a multiple of 10^place, as plain digits. */
function atPlace(x: number, place: number): string {
  const rounded = shift(Math.round(shift(x, -place)), place)
  const text = place < 0 ? rounded.toFixed(Math.min(100, -place)) : String(rounded)
  return Number(text) === 0 ? text.replace('-', '') : text
}

/** So many significant digits; an exponent only outside 1e-4 … 1e6. `1.20`, `-0.00310`, `1.5e-9`. */
export function formatNumber(x: number, digits: number): string {
  if (!Number.isFinite(x)) return 'not a number'
  if (x === 0) return '0'
  const rounded = Number(x.toPrecision(digits))
  const size = Math.abs(rounded)
  if (size < 1e-4 || size >= 1e6) return x.toExponential(digits - 1).replace('e+', 'e')
  return atPlace(rounded, magnitude(rounded) - digits + 1)
}

export type Formatted = {
  /** With a hyphen for minus. */
  readonly value: string
  /** Expanded uncertainty for 95 %; null where it is not known. */
  readonly U: string | null
  readonly unit: string
  /** For people: `−12.3 ± 0.4 cm³/min`. */
  readonly text: string
}

/** Figures of a value whose uncertainty is not known: enough to read, no claim. */
const FIGURES_WITHOUT_U = 4

/** In a unit, rounded to two significant digits of U, the value to the same place (GUM 7.2.6). */
export function formatQuantity(q: Quantity, unit: Unit): Formatted {
  const value = toUnit(q.value, unit)
  const spread = expanded(q)
  const name = unit.text === '1' ? '' : ` ${unit.text}`
  if (spread === null || spread.U === 0 || !Number.isFinite(spread.U)) {
    // An exact value is shown as it is; twelve figures keep the tail of a conversion away.
    const shown = spread?.U === 0 ? plainDigits(value) : formatNumber(value, FIGURES_WITHOUT_U)
    const said = spread?.U === 0 ? '' : ' (uncertainty not known)'
    return {
      value: shown,
      U: spread?.U === 0 ? '0' : null,
      unit: unit.text,
      text: `${printed(shown)}${name}${said}`,
    }
  }
  const U = toUnitDifference(spread.U, unit)
  // 0.0996 rounds to 0.10, whose second figure is one place further up.
  const place = magnitude(Number(U.toPrecision(2))) - 1
  const exponent = commonExponent(Math.max(Math.abs(value), U))
  const scaled = (x: number) => atPlace(shift(x, -exponent), place - exponent)
  if (exponent === 0) {
    const [shown, shownU] = [atPlace(value, place), atPlace(U, place)]
    return { value: shown, U: shownU, unit: unit.text, text: `${printed(shown)} ± ${shownU}${name}` }
  }
  const [mantissa, mantissaU] = [scaled(value), scaled(U)]
  const text = `(${printed(mantissa)} ± ${mantissaU})·10${superscript(exponent)}${name}`
  return { value: `${mantissa}e${exponent}`, U: `${mantissaU}e${exponent}`, unit: unit.text, text }
}

function plainDigits(value: number): string {
  const short = Number(value.toPrecision(12))
  return value !== 0 && (Math.abs(short) < 1e-4 || Math.abs(short) >= 1e15)
    ? short.toExponential()
    : String(short)
}

/** 0 where plain digits are readable. */
function commonExponent(size: number): number {
  return size > 0 && (size < 1e-4 || size >= 1e6) ? magnitude(size) : 0
}

const kindUnits = new Map<Kind, Unit>()

/** The SI unit in which a kind is computed. */
export function kindUnit(kind: Kind): Unit {
  const known = kindUnits.get(kind)
  if (known) return known
  const { unit: text, dim } = KINDS[kind]
  const parsed = parseUnit(text)
  // Texts have no unit; every other kind's is one of ours (a test reads them all).
  const unit = parsed.ok ? parsed.value : { text, dim, factor: 1, offset: 0, energy: false }
  kindUnits.set(kind, unit)
  return unit
}
