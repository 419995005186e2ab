/** Quantities as they are written: `96.4 ± 0.6 L (k=3)`, `12.0(3) N`, `5 kN ± 1 %`, `0.3 K (u)`. */

import { differenceToSI, toSI } from './convert.ts'
import { aKind, sameDimension } from './dimension.ts'
import { moveFaults, refuse } from './faults.ts'
import { readNumber } from './number-text.ts'
import type { Result, Shape, Stated, Unit } from './types.ts'
import { parseUnit } from './unit-text.ts'

/** What ± stands for where the text does not say it. */
export type StatedOptions = { readonly uncertainty?: 'expanded' | 'limits' }

/** `(k=2)`, `(limits)`, `(u)`, `(exact)` at the end of a text. */
export type Tag =
  | { readonly kind: 'k'; readonly k: number }
  | { readonly kind: 'limits' | 'u' | 'exact' }
  | { readonly kind: 'none' }

const TAG = /\s*\(\s*(?:(k)\s*=\s*([^)]*?)|(limits|u|exact))\s*\)\s*$/
const TAGS = ['(k=2)', '(limits)', '(u)', '(exact)']

/** Takes the tag off the end of a text. Words in brackets that are no tag are a fault. */
export function takeTag(text: string): Result<{ readonly body: string; readonly tag: Tag }> {
  const match = TAG.exec(text)
  if (!match) {
    const other = /\(\s*([A-Za-z][A-Za-z %=.\d]*)\)\s*$/.exec(text)
    // `rad/(N·m)` and `1/(h)` are units; a bracket behind a blank is not.
    if (!other || !/\s$/.test(text.slice(0, other.index)))
      return { ok: true, value: { body: text, tag: { kind: 'none' } } }
    const message = `\`${other[0].trim()}\` does not say what the ± stands for`
    return refuse('quantity/uncertainty', message, other.index, text.length, { expected: TAGS })
  }
  const body = text.slice(0, match.index)
  const word = match[3]
  if (word === 'limits' || word === 'u' || word === 'exact')
    return { ok: true, value: { body, tag: { kind: word } } }
  const k = Number(match[2])
  if (match[2] === '' || !(k > 0) || !Number.isFinite(k)) {
    const message = `\`${match[0].trim()}\` is not a coverage factor`
    return refuse('quantity/uncertainty', message, match.index, text.length, { expected: ['(k=2)'] })
  }
  return { ok: true, value: { body, tag: { kind: 'k', k } } }
}

/** Standard uncertainty of a ±: divided by k, or by √3 for the half-width of a rectangle (GUM 4.3.7). */
export function standardFrom(
  halfWidth: number,
  tag: Tag,
  bare: 'expanded' | 'limits',
): { u: number; shape: Shape } {
  if (tag.kind === 'k') return { u: halfWidth / tag.k, shape: 'normal' }
  if (tag.kind === 'u') return { u: halfWidth, shape: 'normal' }
  if (tag.kind === 'limits' || bare === 'limits') return { u: halfWidth / Math.sqrt(3), shape: 'rectangular' }
  return { u: halfWidth / 2, shape: 'normal' }
}

const PURE: Unit = { text: '1', dim: [0, 0, 0, 0, 0, 0], factor: 1, offset: 0, energy: false }

type Half = {
  readonly value: number
  readonly places: number
  readonly figures: number | null
  readonly unit: Unit | null
}

/** A number, `(3)` behind its last figure, and a unit; each with its place. */
function readHalf(text: string, start: number, what: string): Result<Half> {
  const blanks = text.length - text.trimStart().length
  const body = text.trim()
  const at = start + blanks
  const number = readNumber(body)
  if (number === null) {
    const message = body === '' ? `${what} is missing` : `\`${body}\` does not start with a number`
    return refuse('quantity/syntax', message, at, at + body.length, {
      hint: 'write a number and its unit, as in `2.5 kPa`',
    })
  }
  if (!number.ok) return moveFaults(number, at)
  const { value, places, length } = number.value
  const bracket = /^\((\d+)\)/.exec(body.slice(length))
  const behind = length + (bracket?.[0].length ?? 0)
  const figures = bracket ? Number(bracket[1]) : null
  const unitText = body.slice(behind)
  if (unitText.trim() === '') return { ok: true, value: { value, places, figures, unit: null } }
  const unit = parseUnit(unitText)
  if (!unit.ok) return moveFaults(unit, at + behind)
  return { ok: true, value: { value, places, figures, unit: unit.value } }
}

/** 3 in the place of tenths is 3 / 10: dividing leaves no float's tail. */
function inLastPlace(figures: number, places: number): number {
  return places > 0 ? figures / 10 ** places : figures * 10 ** -places
}

/** Uncertainty as written, in SI: a half-width in the value's own unit, in another of its kind, or in per cent of it. */
function halfWidthSI(main: Half, spread: Half, unit: Unit, start: number, end: number): Result<number> {
  if (spread.unit === null || main.unit === null)
    return { ok: true, value: differenceToSI(spread.value, unit) }
  const relative = spread.unit.text === '%' || spread.unit.text === 'ppm'
  if (sameDimension(spread.unit.dim, main.unit.dim)) {
    if (relative) {
      const hint = `write \`${main.value} ± ${spread.value} ${unit.text}\``
      return refuse(
        'quantity/uncertainty',
        'a percentage of a percentage can be meant in two ways',
        start,
        end,
        { hint },
      )
    }
    return { ok: true, value: differenceToSI(spread.value, spread.unit) }
  }
  if (relative && unit.offset !== 0) {
    const hint = 'write the uncertainty in kelvin, as in `20 °C ± 0.5 K`'
    return refuse('quantity/uncertainty', 'a percentage of a temperature depends on the scale', start, end, {
      hint,
    })
  }
  if (relative) return { ok: true, value: Math.abs(toSI(main.value, unit)) * toSI(spread.value, spread.unit) }
  const message = `the uncertainty is ${aKind(spread.unit.dim)}, the value ${aKind(unit.dim)}`
  return refuse('quantity/uncertainty', message, start, end)
}

/** Reads a quantity. A bare number is dimensionless. Faults carry offsets into `text`. */
export function parseStated(text: string, options: StatedOptions = {}): Result<Stated> {
  const tagged = takeTag(text)
  if (!tagged.ok) return tagged
  const { body, tag } = tagged.value
  const sign = /±|\+\/-|\+-/.exec(body)
  const main = readHalf(sign ? body.slice(0, sign.index) : body, 0, 'the value')
  if (!main.ok) return main
  const { value, places, figures } = main.value
  const behind = sign ? sign.index + sign[0].length : body.length
  const spread = sign ? readHalf(body.slice(behind), behind, 'the uncertainty') : null
  if (spread && !spread.ok) return spread

  const tagFault = checkTag(tag, sign !== null, figures !== null)
  if (tagFault)
    return refuse('quantity/uncertainty', tagFault, body.trimEnd().length, text.length, { expected: TAGS })

  const unit = main.value.unit ?? spread?.value.unit ?? PURE
  const digit = differenceToSI(inLastPlace(1, places), unit)
  const stated = { text: text.trim(), value: toSI(value, unit), unit, digit, exact: tag.kind === 'exact' }
  if (tag.kind === 'exact') return { ok: true, value: { ...stated, u: 0, shape: 'normal' } }
  if (figures !== null)
    return {
      ok: true,
      value: { ...stated, u: differenceToSI(inLastPlace(figures, places), unit), shape: 'normal' },
    }
  if (!spread) {
    // `0.3 K (u)` is a standard uncertainty; it has none of its own.
    if (tag.kind === 'u')
      return { ok: true, value: { ...stated, u: 0, shape: 'normal', isUncertainty: true } }
    return { ok: true, value: { ...stated, u: null, shape: 'normal' } }
  }
  if (!(spread.value.value > 0)) {
    const hint = 'write `(exact)` for a value without uncertainty'
    return refuse('quantity/uncertainty', 'the uncertainty must be greater than 0', behind, body.length, {
      hint,
    })
  }
  const halfWidth = halfWidthSI(main.value, spread.value, unit, behind, body.length)
  if (!halfWidth.ok) return halfWidth
  return {
    ok: true,
    value: { ...stated, ...standardFrom(halfWidth.value, tag, options.uncertainty ?? 'expanded') },
  }
}

function checkTag(tag: Tag, hasSign: boolean, hasFigures: boolean): string | null {
  if (hasSign && hasFigures) return 'the uncertainty is given twice, in brackets and behind ±'
  if (hasSign && tag.kind === 'exact') return '`(exact)` says that there is no uncertainty, and ± gives one'
  if (hasFigures && tag.kind !== 'none')
    return 'figures in brackets are a standard uncertainty and take no further word'
  if (!hasSign && (tag.kind === 'k' || tag.kind === 'limits'))
    return 'there is no ± that the brackets could be about'
  return null
}
