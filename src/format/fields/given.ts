/** A given as it stands in a file, before the method says what it is for. */
import type { Result } from '../../quantity/types.ts'
import { named } from './common.ts'
import { type FieldFault, plainField } from './reader.ts'

export type RawGiven =
  | { readonly form: 'text'; readonly text: string; readonly with?: string; readonly nested: boolean }
  | { readonly form: 'result'; readonly from: string; readonly measure: string }

export const givens = named(plainField(readGiven))

/** `96.4 ± 0.6 L`, `{value: 96.2 ± 0.6 L, with: scale-02}` or `{from: <run id>, measure: stiffness}`. */
function readGiven(raw: unknown): Result<RawGiven, readonly FieldFault[]> {
  if (typeof raw === 'string') return { ok: true, value: { form: 'text', text: raw, nested: false } }
  const entries = raw !== null && typeof raw === 'object' && !Array.isArray(raw) ? Object.entries(raw) : []
  const fields = new Map(entries.filter((entry): entry is [string, string] => typeof entry[1] === 'string'))
  const names = entries.map(([name]) => name)
  const value = fields.get('value')
  const from = fields.get('from')
  const measure = fields.get('measure')
  if (
    value !== undefined &&
    names.every((name) => name === 'value' || (name === 'with' && fields.has('with')))
  ) {
    return { ok: true, value: { form: 'text', text: value, with: fields.get('with'), nested: true } }
  }
  if (from !== undefined && measure !== undefined && names.length === 2) {
    return { ok: true, value: { form: 'result', from, measure } }
  }
  const fault = {
    code: 'given/shape',
    message: 'a given is a text, a value with its instrument, or a result of another run',
    start: 0,
    end: 1,
    expected: [
      '96.4 ± 0.6 L',
      '{value: 96.2 ± 0.6 L, with: scale-02}',
      '{from: <run id>, measure: stiffness}',
    ],
  }
  return { ok: false, error: [fault] }
}
