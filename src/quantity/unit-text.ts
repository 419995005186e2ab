/**
 * Reading a unit: `lbf·in/deg`, `N*m/rad`, `cm³/min`, `kg/m3`, `1/(kPa·min)`, `delta degC`.
 * After a stroke one factor follows, or several in brackets: `a/b·c` means two things and is refused.
 */
import { DIMENSIONLESS, multiplyDimension, powerDimension, sameDimension } from './dimension.ts'
import { KINDS } from './kinds.ts'
import type { Dimension, Fault, Result, Unit } from './types.ts'
import { insteadOf, oftenWritten } from './unit-hints.ts'
import { unitByName } from './unit-names.ts'

type Product = { numerator: number; denominator: number; dim: Dimension; energetic: boolean }

const ONE: Product = { numerator: 1, denominator: 1, dim: DIMENSIONLESS, energetic: false }

/** Same length as before, so that offsets stay true. */
function plain(text: string): string {
  return text
    .replace(/μ/g, 'µ')
    .replace(/[⋅∙×*]/g, '·')
    .replace(/−/g, '-')
    .replace(/₂/g, '2')
    .replace(/\u00a0|\u202f|\t/g, ' ')
    .replace(/\b(US|UK) gal\b/g, '$1_gal')
    .replace(/\bdelta (?=deg|°)/g, 'delta_')
}

const SUPERSCRIPT_DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const NAME =
  /^(?:(?:delta_|Δ)?(?:°[CF]?|deg[CF])(?![A-Za-z])|(?:US|UK)_gal|[A-Za-zµΩ℃℉]*H2O|[A-Za-zµΩ℃℉]+|%|1(?![0-9.]))/
const EXPONENT = /^(?:\^(-?\d+)|([⁻]?[⁰¹²³⁴⁵⁶⁷⁸⁹]+)|([23])(?![0-9.]))/

function exponentValue(match: RegExpExecArray): number {
  if (match[2] === undefined) return Number(match[1] ?? match[3])
  const digits = [...match[2]].map((c) => (c === '⁻' ? '-' : String(SUPERSCRIPT_DIGITS.indexOf(c))))
  return Number(digits.join(''))
}

function raise(a: Product, n: number): Product {
  const [up, down] = n < 0 ? [a.denominator, a.numerator] : [a.numerator, a.denominator]
  const size = Math.abs(n)
  return {
    numerator: up ** size,
    denominator: down ** size,
    dim: powerDimension(a.dim, n),
    energetic: a.energetic,
  }
}

function times(a: Product, b: Product): Product {
  return {
    numerator: a.numerator * b.numerator,
    denominator: a.denominator * b.denominator,
    dim: multiplyDimension(a.dim, b.dim),
    energetic: a.energetic || b.energetic,
  }
}

/** Reads units from a place in a text on; the unit ends where nothing that belongs to a unit follows. */
type Reader = { readonly text: string; at: number; fault: Fault | null }

function fail(
  reader: Reader,
  code: string,
  message: string,
  start: number,
  end: number,
  more: Partial<Fault> = {},
) {
  reader.fault ??= { code, message, start, end: Math.max(end, start + 1), ...more }
  return ONE
}

function readFactor(reader: Reader): Product {
  const rest = reader.text.slice(reader.at)
  let product: Product
  if (rest.startsWith('(')) {
    reader.at++
    product = readProduct(reader, true)
    if (reader.text[reader.at] !== ')') {
      const found = reader.at
      return fail(reader, 'unit/syntax', 'a bracket in the unit is not closed', found, found + 1)
    }
    reader.at++
  } else {
    const name = NAME.exec(rest)?.[0]
    if (!name) {
      const shown =
        rest[0] === undefined ? 'the unit ends where a name is missing' : `\`${rest[0]}\` is not a unit`
      const known = oftenWritten(rest[0] ?? '')
      return fail(reader, known ? 'unit/unknown' : 'unit/syntax', shown, reader.at, reader.at + 1, known)
    }
    const unit = unitByName(name.replace(/^(US|UK)_/, '$1'))
    if (!unit) {
      const instead = insteadOf(name)
      const end = reader.at + name.length
      return fail(reader, 'unit/unknown', `\`${name}\` is not a unit`, reader.at, end, instead)
    }
    if (unit.offset !== 0) {
      const message = `\`${name.replace('_', ' ')}\` is a point on a scale and cannot be part of a product`
      const hint = 'a difference of temperature is written `K` or `delta degF`'
      return fail(reader, 'unit/temperature', message, reader.at, reader.at + name.length, {
        hint,
        expected: ['K'],
      })
    }
    reader.at += name.length
    product = unit
  }
  const exponent = EXPONENT.exec(reader.text.slice(reader.at))
  if (!exponent) return product
  reader.at += exponent[0].length
  return raise(product, exponentValue(exponent))
}

function skipBlanks(reader: Reader) {
  while (reader.text[reader.at] === ' ') reader.at++
}

function readProduct(reader: Reader, inBrackets: boolean): Product {
  skipBlanks(reader)
  let product = readFactor(reader)
  let divided = false
  while (!reader.fault) {
    const before = reader.at
    skipBlanks(reader)
    const sign = reader.text[reader.at]
    if (sign === undefined || (inBrackets && sign === ')')) break
    const divides = sign === '/'
    if (divides || sign === '·') reader.at++
    else if (sign === '.' && /[A-Za-z]/.test(reader.text[reader.at + 1] ?? '')) reader.at++
    else if (before === reader.at) {
      const hint =
        sign === '-' ? 'a product of units is written with `·` or a blank, as in `lbf·in`' : undefined
      fail(reader, 'unit/syntax', `\`${sign}\` cannot stand in a unit`, reader.at, reader.at + 1, { hint })
      break
    }
    if (divided && !divides) {
      const hint = 'put what is divided by into brackets, as in `rad/(N·m)`'
      fail(
        reader,
        'unit/syntax',
        'a factor behind a stroke could belong above or below it',
        before,
        reader.at + 1,
        { hint },
      )
      break
    }
    skipBlanks(reader)
    const factor = readFactor(reader)
    product = times(product, divides ? raise(factor, -1) : factor)
    divided ||= divides
  }
  return product
}

/** A campaign writes the same few units thousands of times. */
const READ = new Map<string, Result<Unit>>()

/** `value_SI = value * factor + offset`. Faults: `unit/unknown`, `unit/syntax`, `unit/temperature`. */
export function parseUnit(text: string): Result<Unit> {
  const known = READ.get(text)
  if (known) return known
  const unit = readUnit(text)
  // What is no unit is mostly not written twice: it is not kept.
  if (unit.ok) READ.set(text, unit)
  return unit
}

function readUnit(text: string): Result<Unit> {
  const trimmed = text.trim()
  const start = text.indexOf(trimmed)
  const whole = unitByName(plain(trimmed))
  if (whole) {
    const { numerator, denominator, dim, offset, energetic } = whole
    const energy = energetic && sameDimension(dim, KINDS.energy.dim)
    return { ok: true, value: { text: trimmed, dim, factor: numerator / denominator, offset, energy } }
  }
  if (trimmed === '') {
    const fault = {
      code: 'unit/syntax',
      message: 'a unit is missing',
      start: 0,
      end: Math.max(1, text.length),
    }
    return { ok: false, error: [fault] }
  }
  const reader: Reader = { text: plain(trimmed), at: 0, fault: null }
  const product = readProduct(reader, false)
  if (reader.fault) {
    const { start: from, end: to, ...fault } = reader.fault
    return { ok: false, error: [{ ...fault, start: from + start, end: to + start }] }
  }
  const factor = product.numerator / product.denominator
  const energy = product.energetic && sameDimension(product.dim, KINDS.energy.dim)
  return { ok: true, value: { text: trimmed, dim: product.dim, factor, offset: 0, energy } }
}
