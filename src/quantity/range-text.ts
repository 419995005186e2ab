/** `-5 kPa .. 0 kPa`, `<= 5 Pa`, `± (0.5 % reading + 0.1 % span)`. */
import { differenceToSI } from './convert.ts'
import { aKind, sameDimension } from './dimension.ts'
import { moveFaults, refuse } from './faults.ts'
import { readNumber } from './number-text.ts'
import { parseStated, standardFrom, takeTag } from './quantity-text.ts'
import type { Dimension, Result, Stated } from './types.ts'
import { parseUnit } from './unit-text.ts'

/** `low .. high`; a unit that stands only behind the second number is that of both. */
export function parseRange(text: string): Result<{ readonly low: Stated; readonly high: Stated }> {
  const dots = /\s*(?:\.\.+|…)\s*/.exec(text)
  if (!dots) {
    const hint = 'write the lower and the upper end, as in `-5 kPa .. 0 kPa`'
    return refuse('quantity/range', `\`${text.trim()}\` is not a range`, 0, text.length, { hint })
  }
  const behind = dots.index + dots[0].length
  const high = parseStated(text.slice(behind))
  if (!high.ok) return moveFaults(high, behind)
  const lowText = text.slice(0, dots.index)
  const bare = readNumber(lowText.trim())
  const borrowed = bare?.ok && bare.value.length === lowText.trim().length ? ` ${high.value.unit.text}` : ''
  const low = parseStated(lowText + borrowed)
  if (!low.ok) return low
  if (!sameDimension(low.value.unit.dim, high.value.unit.dim)) {
    const [a, b] = [aKind(low.value.unit.dim), aKind(high.value.unit.dim)]
    return refuse('quantity/range', `the range goes from ${a} to ${b}`, 0, text.length)
  }
  if (low.value.value >= high.value.value) {
    return refuse('quantity/range', 'the lower end of the range is not below the upper one', 0, text.length)
  }
  return { ok: true, value: { low: low.value, high: high.value } }
}

/** `<= 5 Pa` or `≤ 5 Pa`. */
export function parseAtMost(text: string): Result<Stated> {
  const sign = /^\s*(?:<=|≤)/.exec(text)
  if (!sign) {
    const hint = 'write `<=` and the largest value, as in `<= 5 Pa`'
    return refuse('quantity/range', `\`${text.trim()}\` does not say at most what`, 0, text.length, { hint })
  }
  const stated = parseStated(text.slice(sign[0].length))
  return stated.ok ? stated : moveFaults(stated, sign[0].length)
}

/** Standard uncertainties: `gain` relative to the reading, `offset` in SI. */
export type AccuracyText = {
  readonly text: string
  readonly gain: number
  readonly offset: number
  readonly shape: 'normal' | 'rectangular'
}

const TERM = /^(\S+?)\s*%\s*(?:of\s+)?(reading|rdg|span|FS)?$/

/**
 * An instrument's accuracy: `± (0.5 % reading + 0.1 % span)`, `± 2 Pa`. ± means limits unless `(k=…)` stands there.
 * Terms of one kind add linearly, as a maker's statement does (GUM 4.3.7, example 2).
 * @param span of the instrument's range in SI, null where no range is known
 */
export function parseAccuracy(text: string, span: number | null, dim: Dimension): Result<AccuracyText> {
  const example = { hint: 'write `± (0.5 % reading + 0.1 % span)` or `± 2 Pa`' }
  const tagged = takeTag(text)
  if (!tagged.ok) return tagged
  const { body, tag } = tagged.value
  const sign = /^\s*(?:±|\+\/-|\+-)\s*/.exec(body)
  if (!sign) return refuse('quantity/accuracy', 'an accuracy starts with ±', 0, text.length, example)
  const inner = body.slice(sign[0].length).trim()
  const opened = inner.startsWith('(')
  if (opened !== inner.endsWith(')')) {
    return refuse('quantity/accuracy', 'a bracket of the accuracy is not closed', 0, text.length, example)
  }
  let gain = 0
  let offset = 0
  let at = sign[0].length + (opened ? 1 : 0)
  for (const part of (opened ? inner.slice(1, -1) : inner).split('+')) {
    const term = readTerm(part, span, dim)
    if (!term.ok) return moveFaults(term, at)
    gain += term.value.gain
    offset += term.value.offset
    at += part.length + 1
  }
  const { shape } = standardFrom(1, tag, 'limits')
  const standard = (halfWidth: number) => standardFrom(halfWidth, tag, 'limits').u
  if (tag.kind === 'exact' || shape === 't') {
    return refuse('quantity/accuracy', 'no instrument is exact', body.length, text.length, example)
  }
  return { ok: true, value: { text: text.trim(), gain: standard(gain), offset: standard(offset), shape } }
}

/** One term of an accuracy as half-widths. */
function readTerm(
  part: string,
  span: number | null,
  dim: Dimension,
): Result<{ gain: number; offset: number }> {
  const text = part.trim()
  const number = readNumber(text)
  if (number === null)
    return refuse('quantity/accuracy', `\`${text}\` is not a part of an accuracy`, 0, part.length)
  if (!number.ok) return number
  if (number.value.value < 0)
    return refuse('quantity/accuracy', 'an accuracy is not negative', 0, part.length)
  const percent = TERM.exec(text)
  if (!percent) {
    const unit = parseUnit(text.slice(number.value.length))
    if (!unit.ok) return moveFaults(unit, part.indexOf(text) + number.value.length)
    if (!sameDimension(unit.value.dim, dim)) {
      const message = `the accuracy is ${aKind(unit.value.dim)}, the reading ${aKind(dim)}`
      return refuse('quantity/accuracy', message, 0, part.length)
    }
    return { ok: true, value: { gain: 0, offset: differenceToSI(number.value.value, unit.value) } }
  }
  const share = number.value.value / 100
  const of = percent[2]
  if (of === 'reading' || of === 'rdg') return { ok: true, value: { gain: share, offset: 0 } }
  if (of === undefined) {
    const expected = [`${text} reading`, `${text} span`]
    return refuse('quantity/accuracy', `\`${text}\` does not say of what`, 0, part.length, { expected })
  }
  if (span === null) {
    const hint = 'give the instrument a `range`, as in `0 kPa .. 10 kPa`'
    return refuse('quantity/accuracy', 'the span is not known, since no range is given', 0, part.length, {
      hint,
    })
  }
  return { ok: true, value: { gain: 0, offset: share * span } }
}
