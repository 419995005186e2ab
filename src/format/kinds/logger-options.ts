/** The fields below `readings` of a run that names a data file. */
import { z } from 'zod'
import { refuse } from '../../quantity/faults.ts'
import { parseStated } from '../../quantity/quantity-text.ts'
import type { Result } from '../../quantity/types.ts'
import { named, text } from '../fields/common.ts'
import { fieldsOf, plainField, textField } from '../fields/reader.ts'
import { timeFormat } from '../logger/time-format.ts'
import type { Delimiter, LoggerColumn, LoggerOptions, UsePoint } from '../logger/types.ts'

const scale = textField((written): Result<number> => {
  const value = Number(written)
  if (/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(written) && Number.isFinite(value) && value !== 0)
    return { ok: true, value }
  const hint = 'write a number with a point, not 0, as in `250`; units stand under `unit`'
  return refuse('field/number', `\`${written}\` is no factor`, 0, written.length, { hint })
})

const offset = textField((written) => {
  const stated = parseStated(written)
  if (!stated.ok || stated.value.u === null || stated.value.exact) return stated
  const hint = 'its uncertainty belongs to the instrument'
  return refuse('quantity/uncertainty', 'an offset has no uncertainty here', 0, written.length, { hint })
})

/** Checked with the text at hand, so that the place is that of the letter. */
const format = textField((written) => {
  const read = timeFormat(written)
  return read.ok ? { ok: true, value: written } : read
})

const skip = textField((written): Result<number> => {
  if (/^\d{1,6}$/.test(written)) return { ok: true, value: Number(written) }
  return refuse('field/number', `\`${written}\` is no number of lines`, 0, written.length)
})

/** What cannot be typed well has a word. */
const DELIMITERS: Readonly<Record<string, Delimiter>> = {
  ',': ',',
  ';': ';',
  '|': '|',
  tab: '\t',
  '\t': '\t',
  blanks: ' ',
  ' ': ' ',
}

const delimiter = plainField((raw): Result<Delimiter> => {
  const found = typeof raw === 'string' ? DELIMITERS[raw] : undefined
  if (found !== undefined) return { ok: true, value: found }
  const written = typeof raw === 'string' ? raw : '…'
  const expected = ['","', '";"', '"|"', 'tab', 'blanks']
  return refuse('field/choice', `\`${written}\` is no delimiter`, 0, written.length, { expected })
})

const CLOCK = /^(\d{1,2}):(\d\d)(?::(\d\d(?:\.\d+)?))?$/

/** `120 s`, `10:15`, `line 12`. */
const point = textField((written): Result<UsePoint> => {
  const line = /^line (\d{1,9})$/.exec(written)?.[1]
  if (line !== undefined && Number(line) > 0) return { ok: true, value: { form: 'line', line: Number(line) } }
  const [, hours, minutes, seconds = '0'] = CLOCK.exec(written) ?? []
  if (hours !== undefined && Number(hours) <= 23 && Number(minutes) <= 59 && Number(seconds) < 60) {
    const since = 3600 * Number(hours) + 60 * Number(minutes) + Number(seconds)
    return { ok: true, value: { form: 'clock', seconds: since } }
  }
  const hint =
    'write how long after the first sample, `120 s`, a time of day, `10:15:00`, or a line, `line 12`'
  const stated = parseStated(written)
  const isTime =
    stated.ok && stated.value.unit.dim.every((exponent, base) => exponent === (base === 2 ? 1 : 0))
  if (isTime && stated.value.u === null && stated.value.value >= 0)
    return { ok: true, value: { form: 'elapsed', seconds: stated.value.value } }
  return refuse('readings/use', `\`${written}\` is no place in a log`, 0, written.length, { hint })
})

const column = fieldsOf({
  from: text.optional(),
  unit: text.optional(),
  format: format.optional(),
  scale: scale.optional(),
  offset: offset.optional(),
}).check((context) => {
  const { unit, format, scale, offset } = context.value
  if (format === undefined || (unit ?? scale ?? offset) === undefined) return
  const name = unit !== undefined ? 'unit' : scale !== undefined ? 'scale' : 'offset'
  const message = `a time with a format has no \`${name}\``
  const fault = { code: 'readings/time-format', message, start: 0, end: 1, hint: 'delete one of the two' }
  context.issues.push({ code: 'custom', input: context.value, path: [name], params: { fault } })
})

/** Under `readings`, so that what is wrong is found at its place in the run. */
export const loggerFields = fieldsOf({
  readings: fieldsOf({
    file: text,
    columns: named(column).optional(),
    decimal: z.enum(['.', ',']).optional(),
    delimiter: delimiter.optional(),
    skip: skip.optional(),
    use: fieldsOf({ from: point.optional(), to: point.optional() }).optional(),
    missing: z.array(z.string()).default([]),
  }),
})

export type LoggerFields = z.output<typeof loggerFields>['readings']

/** A column that does not say where it comes from has its own name in the file. */
export function loggerOptions(fields: LoggerFields, missing: readonly string[]): LoggerOptions {
  const { file: _, columns, ...rest } = fields
  const named = Object.entries(columns ?? {}).map(([name, column]): [string, LoggerColumn] => [
    name,
    { ...column, from: column.from ?? name },
  ])
  return {
    ...rest,
    missing: [...rest.missing, ...missing],
    ...(columns ? { columns: Object.fromEntries(named) } : {}),
  }
}
