/** The formulas of a card against what they may name: unknown names, dimensions that do not fit, rings. */
import type { CardRecord, FieldPath, GivenText } from '../format/types.ts'
import type { Method, Schema } from '../methods/method.ts'
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { conjuncts, dimensionOf, namesIn } from '../quantity/formula/index.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Dimension } from '../quantity/types.ts'
import { nameProblems, showProblems } from './check-names.ts'
import { type CardFormulas, type Functions, findRing } from './formulas.ts'
import { misusesOfCard } from './misuse.ts'
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

/** Names whose dimension is known only on the day: what the card asks for, or takes from another run. */
const openNames = (card: CardRecord, dims: Dimensions): ReadonlySet<string> => {
  const written: readonly Readonly<Record<string, GivenText>>[] = [
    card.given,
    ...Object.values(card.articles),
  ]
  const names = [...card.ask, ...written.flatMap((givens) => Object.keys(givens))]
  return new Set(names.filter((name) => !dims[name]))
}

/**
 * Dimensions of one group of formulas, each known as soon as those that it needs are. Formulas that use an open name
 * stay open themselves: the run will tell.
 */
const checkGroup = (
  card: CardRecord,
  group: 'targets' | 'derive' | 'criteria',
  formulas: CardFormulas,
  scope: Dimensions,
  functions: Functions,
  open: ReadonlySet<string>,
): { dims: Dimensions; problems: Problem[]; open: ReadonlySet<string> } => {
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
  const left = new Set(open)
  for (const [name, node] of pending) {
    const dim = dimensionOf(node, dims, functions)
    if (dim.ok) continue
    if (namesIn(node, functions).some((each) => left.has(each))) {
      left.add(name)
      continue
    }
    for (const fault of dim.error) {
      problems.push(problemOfFault(fault, card.source.locate(pathOf(group, name), 'value', fault)))
    }
  }
  return { dims, problems, open: left }
}

/** Formulas in the method's own fields, against each other and against the givens. */
const fieldProblems = (
  card: CardRecord,
  method: Method,
  dims: Dimensions,
  open: ReadonlySet<string>,
): Problem[] => {
  const given = { ...Object.fromEntries([...open].map((name) => [name, null])), ...dims }
  return (method.checkFields?.(card.fields, given) ?? []).map((fault) =>
    problemOfFault(fault, card.source.locate(fault.path, 'value', fault)),
  )
}

const differencesOf = (schema: Schema): ReadonlySet<string> =>
  new Set(schema.measures.flatMap(({ name, kind }) => (kind === 'temperature-difference' ? [name] : [])))

export const checkCard = (
  card: CardRecord,
  method: Method,
  formulas: CardFormulas,
  functions: Functions,
): Problem[] => {
  const parseProblems = formulas.faults.map(({ path, fault }) =>
    problemOfFault(fault, card.source.locate(path, 'value', fault)),
  )
  const rings = (['targets', 'derive'] as const).flatMap((group) =>
    ringProblem(card, group, findRing(formulas[group], functions)),
  )
  if (parseProblems.length + rings.length > 0) return [...parseProblems, ...rings]
  const givens = givenDimensions(card, plannedSchema(method, card))
  const targets = checkGroup(card, 'targets', formulas, givens, functions, openNames(card, givens))
  const schema = plannedSchema(method, card, targets.dims)
  const ownProblems = fieldProblems(card, method, targets.dims, targets.open)
  if (ownProblems.length > 0) return [...targets.problems, ...ownProblems]
  const known = schema.measures.filter((field) => field.dim !== null)
  const measures = Object.fromEntries(known.map((field) => [field.name, field.dim ?? KINDS[field.kind].dim]))
  const unknown = schema.measures.filter((field) => field.dim === null).map(({ name }) => name)
  const open = new Set([...targets.open, ...unknown])
  const derived = checkGroup(card, 'derive', formulas, { ...targets.dims, ...measures }, functions, open)
  const criteria = checkGroup(card, 'criteria', formulas, derived.dims, functions, derived.open)
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
    ...misusesOfCard(card, method, formulas, functions),
    ...nameProblems(card, schema, functions),
    ...showProblems(card, formulas, derived.dims, functions, differencesOf(schema)),
  ]
}
