/** A given that is the result of another run. */
import type { Given } from '../../methods/method.ts'
import { makeProblem } from '../../problems/make.ts'
import type { Problem } from '../../problems/types.ts'
import { sameDimension } from '../../quantity/dimension.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { namesOf } from '../kind-units.ts'
import { fieldNamed, kindsOf } from '../schema-fields.ts'
import type { FieldPath, SourceFile } from '../types.ts'
import type { World } from '../world.ts'
import { article } from './quantity.ts'
import { refer, unknown } from './reference.ts'

/** The run must be there, its method or card must have the measure, and the measure must be of the right kind. */
export function referResult(
  name: string,
  from: string,
  measure: string,
  field: Given | undefined,
  world: World,
  source: SourceFile,
  path: FieldPath,
): Problem[] {
  const missing = refer(world, ['run'], from, source, [...path, 'from'])
  if (missing.length > 0) return missing
  const card = world.cards.get(world.runs.get(from)?.fields.card ?? '')
  const schema = card?.schema?.([])
  if (!card || !schema) return []
  const found = fieldNamed(schema.measures, measure)
  const at = source.locate([...path, 'measure'])
  if (!found) {
    const derived = Object.keys(card.fields.derive)
    if (derived.includes(measure)) return []
    const names = [...schema.measures.map((measure) => measure.name), ...derived]
    return [unknown(`the run \`${from}\` has no measure \`${measure}\``, measure, names, at, undefined)]
  }
  const wanted = field ? kindsOf(field) : []
  const alike = wanted.some((kind) =>
    kindsOf(found).some((other) => sameDimension(KINDS[kind].dim, KINDS[other].dim)),
  )
  if (alike || wanted.length === 0) return []
  const message = `\`${name}\` is given as the measure \`${measure}\`, ${article(namesOf([found.kind]))}`
  const why = `${article(namesOf([found.kind]))} cannot stand for ${article(namesOf(wanted))}`
  return [makeProblem({ code: 'unit/wrong-dimension', message, at, why })]
}
