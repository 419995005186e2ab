/** Dimensions: exponents of m, kg, s, A, K and rad. */
import { KINDS } from './kinds.ts'
import type { Dimension } from './types.ts'

export const DIMENSIONLESS: Dimension = [0, 0, 0, 0, 0, 0]

const BASE_UNITS = ['m', 'kg', 's', 'A', 'K', 'rad'] as const

/** Exponents may be fractions (√), and fractions are not exact in binary. */
const EXPONENT_TOLERANCE = 1e-9

function map(a: Dimension, b: Dimension, f: (x: number, y: number) => number): Dimension {
  return [f(a[0], b[0]), f(a[1], b[1]), f(a[2], b[2]), f(a[3], b[3]), f(a[4], b[4]), f(a[5], b[5])]
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => Math.abs(exponent - (b[i] ?? 0)) < EXPONENT_TOLERANCE)
}

export function multiplyDimension(a: Dimension, b: Dimension): Dimension {
  return map(a, b, (x, y) => x + y)
}

export function divideDimension(a: Dimension, b: Dimension): Dimension {
  return map(a, b, (x, y) => x - y)
}

export function powerDimension(a: Dimension, n: number): Dimension {
  // `+ 0` turns the −0 of 0 · −1 into 0, so that equal dimensions also look equal.
  return map(a, a, (x) => x * n + 0)
}

const SUPERSCRIPTS: Record<string, string> = {
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
  '-': '⁻',
}

/** `-12` → `⁻¹²`. A fraction keeps its digits behind a caret. */
export function superscript(exponent: number): string {
  if (!Number.isInteger(exponent)) return `^${exponent}`
  return [...String(exponent)].map((character) => SUPERSCRIPTS[character] ?? character).join('')
}

/** The SI unit of a dimension in base units: `m²·kg/s³`, `1/(s·K)`, `1`. */
export function dimensionUnit(dim: Dimension): string {
  const term = (i: number, exponent: number) =>
    `${BASE_UNITS[i]}${exponent === 1 ? '' : superscript(exponent)}`
  const above = dim.flatMap((exponent, i) => (exponent > 0 ? [term(i, exponent)] : []))
  const below = dim.flatMap((exponent, i) => (exponent < 0 ? [term(i, -exponent)] : []))
  const numerator = above.join('·') || '1'
  if (below.length === 0) return numerator
  return `${numerator}/${below.length > 1 ? `(${below.join('·')})` : below[0]}`
}

/** In words where the trade has one (`pressure`, `moment or energy`), else the SI unit. */
export function describeDimension(dim: Dimension): string {
  if (sameDimension(dim, DIMENSIONLESS)) return KINDS.number.name
  const names = Object.values(KINDS)
    .filter((kind) => sameDimension(kind.dim, dim))
    .map((kind) => kind.name)
  return names.length > 0 ? names.join(' or ') : dimensionUnit(dim)
}

/** The same with its article, for sentences: `an angle`. */
export function aKind(dim: Dimension): string {
  const words = describeDimension(dim)
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`
}
