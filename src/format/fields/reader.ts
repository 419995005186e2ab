/** Zod types whose faults carry a code and a span, so that a problem can point into the text of a field. */
import { z } from 'zod'
import type { Fault, Result } from '../../quantity/types.ts'
import type { FieldPath } from '../types.ts'

/** A fault with the way from the field that was read down to where it lies. */
export type FieldFault = Fault & { readonly path?: FieldPath; readonly part?: 'key' | 'value' }

/** Reads a text; leading and trailing blanks do not count. */
export function textField<T>(read: (text: string) => Result<T>): z.ZodType<T, string> {
  return z.string().transform((raw, context): T => {
    const text = raw.trim()
    const blanks = raw.length - raw.trimStart().length
    const result = text === '' ? emptyText() : read(text)
    if (result.ok) return result.value
    for (const fault of result.error) {
      const moved = { ...fault, start: fault.start + blanks, end: fault.end + blanks }
      context.issues.push({ code: 'custom', input: raw, params: { fault: moved } })
    }
    return z.NEVER
  })
}

/** Reads whatever YAML gave. */
export function plainField<T>(read: (raw: unknown) => Result<T, readonly FieldFault[]>): z.ZodType<T> {
  return z.unknown().transform((raw, context): T => {
    const result = read(raw)
    if (result.ok) return result.value
    for (const fault of result.error) {
      context.issues.push({ code: 'custom', input: raw, path: [...(fault.path ?? [])], params: { fault } })
    }
    return z.NEVER
  })
}

/** A set of fields, none of them unknown. The message of an unknown field is the list of the known ones. */
export function fieldsOf<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  const known = Object.keys(shape).join(' ')
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? known : undefined) })
}

function emptyText(): { ok: false; error: Fault[] } {
  const hint = 'write a value, or delete the field'
  return {
    ok: false,
    error: [{ code: 'field/empty', message: 'this text is empty', start: 0, end: 1, hint }],
  }
}
