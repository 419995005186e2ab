/** Who takes part: id → name, organisation, licence, addresses, roles. */
import { z } from 'zod'
import { keyed, text, texts } from '../fields/common.ts'
import { fieldsOf } from '../fields/reader.ts'
import type { Person } from '../types.ts'

const person = fieldsOf({
  name: text,
  organisation: text.optional(),
  licence: text.optional(),
  emails: texts.default([]),
  login: text.optional(),
  roles: z.array(z.enum(['record', 'witness', 'review', 'concede'])).default([]),
})

export const peopleFields = keyed(person)

export function peopleById(fields: z.output<typeof peopleFields>): Record<string, Person> {
  return Object.fromEntries(Object.entries(fields).map(([id, fields]) => [id, { id, ...fields }]))
}
