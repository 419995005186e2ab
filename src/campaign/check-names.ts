/** Names and units of a card that its formulas and pages rest on: one name, one meaning; a unit that fits. */
import type { CardRecord, FieldPath } from '../format/types.ts'
import type { Schema } from '../methods/method.ts'
import { makeProblem } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { describeDimension, sameDimension } from '../quantity/dimension.ts'
import { BUILTINS, CONSTANTS, conjuncts, dimensionOf } from '../quantity/formula/index.ts'
import type { Dimension } from '../quantity/types.ts'
import { isUnitName } from '../quantity/unit-names.ts'
import { parseUnit } from '../quantity/unit-text.ts'
import type { CardFormulas, Functions } from './formulas.ts'

type Dimensions = Readonly<Record<string, Dimension>>

const takenBy = (name: string, schema: Schema, functions: Functions): string | null => {
  if (schema.measures.some((field) => field.name === name)) return 'a measure of the method'
  if (isUnitName(name)) return 'a unit'
  if (name in BUILTINS || name in CONSTANTS || name in functions) return 'a function or constant of formulas'
  return null
}

export const nameProblems = (card: CardRecord, schema: Schema, functions: Functions): Problem[] =>
  (['targets', 'derive'] as const).flatMap((group) =>
    Object.keys(card[group]).flatMap((name) => {
      const owner = takenBy(name, schema, functions)
      if (!owner) return []
      return [
        makeProblem({
          code: 'formula/name-taken',
          message: `\`${name}\` is the name of ${owner} already`,
          at: card.source.locate([group, name], 'key'),
          hint: 'give the formula another name',
        }),
      ]
    }),
  )

const unitProblem = (
  card: CardRecord,
  text: string,
  dim: Dimension | undefined,
  what: string,
  path: FieldPath,
): Problem[] => {
  const unit = parseUnit(text)
  if (!unit.ok || !dim || sameDimension(unit.value.dim, dim)) return []
  return [
    makeProblem({
      code: 'unit/wrong-dimension',
      message: `${what} is ${describeDimension(dim)} and cannot be shown in ${text}, a unit of ${describeDimension(unit.value.dim)}`,
      at: card.source.locate(path),
    }),
  ]
}

/** A difference of temperatures on a scale with a zero of its own would be off by that zero. */
const scaleProblem = (card: CardRecord, text: string, what: string, path: FieldPath): Problem[] => {
  const unit = parseUnit(text)
  if (!unit.ok || unit.value.offset === 0) return []
  return [
    makeProblem({
      code: 'unit/meaning',
      message: `${what} is a difference of temperatures and cannot be shown in ${text}`,
      at: card.source.locate(path),
      why: `${text} is a point on a scale: 5 K of difference would be shown as −268 °C`,
      hint: 'write K',
    }),
  ]
}

/** Units that results are to be shown in. */
export const showProblems = (
  card: CardRecord,
  formulas: CardFormulas,
  dims: Dimensions,
  functions: Functions,
  differences: ReadonlySet<string>,
): Problem[] => [
  ...Object.entries(card.show).flatMap(([name, text]) =>
    differences.has(name) ? scaleProblem(card, text, `\`${name}\``, ['show', name]) : [],
  ),
  ...card.criteria.flatMap(({ id, show }) => {
    const node = formulas.criteria.get(id)
    const first = node?.type === 'compare' ? node.operands[0] : undefined
    const isDifference = first?.type === 'name' && differences.has(first.name)
    return show && isDifference ? scaleProblem(card, show, `\`${id}\``, ['criteria', id, 'show']) : []
  }),
  ...Object.entries(card.show).flatMap(([name, text]) =>
    unitProblem(card, text, dims[name], `\`${name}\``, ['show', name]),
  ),
  ...card.criteria.flatMap(({ id, show }) => {
    const node = formulas.criteria.get(id)
    const compares = node && conjuncts(node)
    if (!show || !compares?.ok) return []
    const sides = compares.value.map(
      (compare) => compare.operands[0] && dimensionOf(compare.operands[0], dims, functions),
    )
    const unit = parseUnit(show)
    const fits = sides.some((side) => side?.ok && unit.ok && sameDimension(unit.value.dim, side.value))
    const first = sides.find((side) => side?.ok)
    return fits || !first?.ok
      ? []
      : unitProblem(card, show, first.value, `\`${id}\``, ['criteria', id, 'show'])
  }),
]
