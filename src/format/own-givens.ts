/** Givens that a card brings for its own formulas: a wing area for a gust load, a hinge coefficient for a criterion. */
import type { Schema } from '../methods/method.ts'
import { isUnitName } from '../quantity/unit-names.ts'
import type { CardFields } from './kinds/card.ts'
import { fieldNamed } from './schema-fields.ts'

const NAME = /[a-z][a-z0-9_]*/g

/** Names that a formula of the card or of its method's fields speaks of, but for what the method measures, what formulas give, and units. */
export function ownGivens(fields: CardFields, schema: Schema | undefined): ReadonlySet<string> {
  const criteria = Object.values(fields.criteria).map((criterion) => criterion.accept)
  const texts = [...Object.values(fields.targets), ...Object.values(fields.derive), ...criteria]
  const names = texts.flatMap((text) => text.match(NAME) ?? [])
  const taken = (name: string) =>
    isUnitName(name) ||
    Object.hasOwn(fields.targets, name) ||
    Object.hasOwn(fields.derive, name) ||
    (schema !== undefined && fieldNamed(schema.measures, name) !== undefined)
  return new Set([...names.filter((name) => !taken(name)), ...(schema?.uses ?? [])])
}
