/** Fields of a method's schema by name; `<…>` in a name stands for a name of the card's own. */
import type { Field } from '../methods/method.ts'
import { KINDS, type Kind } from '../quantity/kinds.ts'

/** The field of this name, or the one whose pattern fits it (`at_horn` for `at_<station>`). */
export function fieldNamed<T extends Field>(fields: readonly T[], name: string): T | undefined {
  return (
    fields.find((field) => field.name === name) ??
    fields.find((field) => field.name.includes('<') && pattern(field.name).test(name))
  )
}

/** Every kind where it is known only on the day what it will be. */
export const kindsOf = (field: Field): readonly Kind[] =>
  field.dim === null ? (Object.keys(KINDS) as Kind[]) : [field.kind, ...(field.or ?? [])]

const pattern = (name: string) =>
  new RegExp(
    `^${name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/<[^>]*>/g, '[a-z0-9]+(?:_[a-z0-9]+)*')}$`,
  )
