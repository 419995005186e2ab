/** The formulas of a card against what they may name: unknown names, dimensions that do not fit, rings. */
import type { CardRecord, FieldPath, GivenText } from '../format/types.ts'
import type { Method, Schema } from '../methods/method.ts'
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { conjuncts, dimensionOf } from '../quantity/formula/index.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Dimension } from '../quantity/types.ts'
import { nameProblems, showProblems } from './check-names.ts'
import { type CardFormulas, type Functions, findRing } from './formulas.ts'
import { plannedSchema } from './schema.ts'

type Dimensions = Readonly<Record<string, Dimension>>

const givenDimensions = (card: CardRecord, schema: Schema): Dimensions => {
  const dims: Record<string, Dimension> = {}
  for (const field of schema.givens) {
    if (field.role === 'setpoint' || field.role === 'known') dims[field.name] = KINDS[field.kind].dim
  }
  const written: readonly Readonly<Record<string, GivenText>>[] = [
    card.given,
    ...Object.values(card.articles),
  ]
  for (const [name, given] of written.flatMap((givens) => Object.entries(givens))) {
    if (given.form === 'quantity') dims[name] = given.stated.unit.dim
  }
  return dims
}

/** Places of a formula: a span inside the text of its field. */
const pathOf = (group: 'targets' | 'derive' | 'criteria', name: string): FieldPath =>
  group === 'criteria' ? ['criteria', name, 'accept'] : [group, name]

const ringProblem = (card: CardRecord, group: 'targets' | 'derive', ring: readonly string[]): Problem[] => {
  const [first] = ring
  if (!first) return []
  return [
    makeProblem({
      code: 'formula/cycle',
      message: `the formulas of \`${group}\` need each other in a ring: ${ring.join(' → ')}`,
      at: card.source.locate([group, first]),
      why: 'they are evaluated in order of dependence, and a ring has no beginning',
      hint: 'give one of them a value that does not depend on the others',
    }),
  ]
}

/** Dimensions of one group of formulas, each known as soon as those that it needs are. */
const checkGroup = (
  card: CardRecord,
  group: 'targets' | 'derive' | 'criteria',
  formulas: CardFormulas,
  scope: Dimensions,
  functions: Functions,
): { dims: Dimensions; problems: Problem[] } => {
  const dims: Record<string, Dimension> = { ...scope }
  const problems: Problem[] = []
  const pending = new Map(formulas[group])
  let progress = true
  while (pending.size > 0 && progress) {
    progress = false
    for (const [name, node] of pending) {
      const dim = dimensionOf(node, dims, functions)
      if (!dim.ok) continue
      if (group !== 'criteria') dims[name] = dim.value
      pending.delete(name)
      progress = true
    }
  }
  for (const [name, node] of pending) {
    const dim = dimensionOf(node, dims, functions)
    if (dim.ok) continue
    for (const fault of dim.error) {
      problems.push(problemOfFault(fault, card.source.locate(pathOf(group, name), 'value', fault)))
    }
  }
  return { dims, problems }
}

export const checkCard = (
  card: CardRecord,
  method: Method,
  formulas: CardFormulas,
  functions: Functions,
): Problem[] => {
  const schema = plannedSchema(method, card)
  const parseProblems = formulas.faults.map(({ path, fault }) =>
    problemOfFault(fault, card.source.locate(path, 'value', fault)),
  )
  const rings = (['targets', 'derive'] as const).flatMap((group) =>
    ringProblem(card, group, findRing(formulas[group], functions)),
  )
  if (parseProblems.length + rings.length > 0) return [...parseProblems, ...rings]
  const targets = checkGroup(card, 'targets', formulas, givenDimensions(card, schema), functions)
  const measures = Object.fromEntries(schema.measures.map((field) => [field.name, KINDS[field.kind].dim]))
  const derived = checkGroup(card, 'derive', formulas, { ...targets.dims, ...measures }, functions)
  const criteria = checkGroup(card, 'criteria', formulas, derived.dims, functions)
  const comparisons = [...formulas.criteria].flatMap(([name, node]) => {
    const compares = conjuncts(node)
    return compares.ok
      ? []
      : compares.error.map((fault) =>
          problemOfFault(fault, card.source.locate(pathOf('criteria', name), 'value', fault)),
        )
  })
  return [
    ...targets.problems,
    ...derived.problems,
    ...criteria.problems,
    ...comparisons,
    ...nameProblems(card, schema, functions),
    ...showProblems(card, formulas, derived.dims, functions),
  ]
}
