/** The small readers that the kinds of file are made of. */
import { z } from 'zod'
import { refuse } from '../../quantity/faults.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import { parseAtMost, parseRange } from '../../quantity/range-text.ts'
import { parseUnit } from '../../quantity/unit-text.ts'
import { readDay, readMoment } from './moment.ts'
import { fieldsOf, textField } from './reader.ts'
import { readRule } from './rule.ts'

export const text = textField((written) => ({ ok: true, value: written }))
export const moment = textField(readMoment)
export const day = textField(readDay)
export const rule = textField(readRule)
export const quantity = textField((written) => parseStated(written))
export const range = textField(parseRange)
export const atMost = textField(parseAtMost)

/** A unit, kept as written. */
export const unit = textField((written) => {
  const unit = parseUnit(written)
  return unit.ok ? { ok: true, value: written } : unit
})

/** A whole number from 1. */
export const counting = textField((written) => {
  const value = /^\d{1,6}$/.test(written) ? Number(written) : 0
  if (value > 0) return { ok: true, value }
  return refuse('field/number', `\`${written}\` is no whole number from 1 upwards`, 0, written.length)
})

/** Any plain number, also a negative one. */
export const order = textField((written) => {
  const value = /^-?\d+(\.\d+)?$/.test(written) ? Number(written) : Number.NaN
  if (Number.isFinite(value)) return { ok: true, value }
  return refuse('field/number', `\`${written}\` is no number`, 0, written.length)
})

export const texts = z.array(text)

/** One or more. */
export const someTexts = texts.check((context) => {
  if (context.value.length > 0) return
  const fault = {
    code: 'field/empty',
    message: 'this list is empty',
    start: 0,
    end: 1,
    hint: 'name at least one',
  }
  context.issues.push({ code: 'custom', input: context.value, params: { fault } })
})

/** A list with at most one entry, or the entry alone. */
export const oneText = z.preprocess((raw) => (Array.isArray(raw) && raw.length === 1 ? raw[0] : raw), text)

export const files = z.array(fieldsOf({ file: text, caption: text }))

const NAME = /^[a-z][a-z0-9_]*$/

/** Fields under free names of the kind that formulas can use. */
export function named<T extends z.core.$ZodType>(value: T) {
  return z.record(z.string().regex(NAME), value)
}

/** Fields under any names: ids, paths. */
export function keyed<T extends z.core.$ZodType>(value: T) {
  return z.record(z.string(), value)
}
