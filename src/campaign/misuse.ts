/** What formulas hand to functions: of the right dimension, but is it what the parameter means? Methods know. */
import type { CardRecord, FieldPath, GivenText } from '../format/types.ts'
import type { Method } from '../methods/method.ts'
import { problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { callsIn, namesIn } from '../quantity/formula/index.ts'
import type { Node } from '../quantity/formula/types.ts'
import { lazily } from '../quantity/lazily.ts'
import { basisOf, type CardFormulas, type Functions, parseCard } from './formulas.ts'
import type { RunContext } from './run.ts'

type Words = Readonly<Record<string, string>>

type Argument = {
  readonly path: FieldPath
  readonly node: Node
  readonly parameter: string
  /** Through derived values and targets. */
  readonly names: readonly string[]
}

const found = new WeakMap<CardFormulas, { functions: Functions; all: readonly Argument[] }>()

/** Found once a card: its runs have the same formulas. */
const argumentsOf = (formulas: CardFormulas, functions: Functions): readonly Argument[] => {
  const before = found.get(formulas)
  if (before?.functions === functions) return before.all
  const all = findArguments(formulas, functions)
  found.set(formulas, { functions, all })
  return all
}

const findArguments = (formulas: CardFormulas, functions: Functions): Argument[] => {
  const basis = basisOf(new Map([...formulas.targets, ...formulas.derive]), functions)
  const within = (nodes: ReadonlyMap<string, Node>, path: (name: string) => FieldPath): Argument[] =>
    [...nodes].flatMap(([name, formula]) =>
      callsIn(formula).flatMap((call) =>
        call.args.flatMap((node, i) => {
          const parameter = Object.hasOwn(functions, call.name)
            ? functions[call.name]?.parameters[i]?.name
            : undefined
          if (parameter === undefined) return []
          const names = namesIn(node, functions).flatMap((each) => [each, ...basis(each)])
          return [{ path: path(name), node, parameter, names }]
        }),
      ),
    )
  return [
    ...within(formulas.targets, (name) => ['targets', name]),
    ...within(formulas.derive, (name) => ['derive', name]),
    ...within(formulas.criteria, (name) => ['criteria', name, 'accept']),
  ]
}

const wordsOf = (...written: readonly Readonly<Record<string, GivenText>>[]): Words =>
  Object.fromEntries(
    written.flatMap((givens) =>
      Object.entries(givens).flatMap(([name, given]) => (given.form === 'word' ? [[name, given.word]] : [])),
    ),
  )

/** Misuse that the card shows by itself, each once, on whichever of its articles. */
export const misusesOfCard = (
  card: CardRecord,
  method: Method,
  formulas: CardFormulas,
  functions: Functions,
): Problem[] => {
  const { misuse } = method
  if (!misuse) return []
  const articles = Object.values(card.articles)
  const settings = (articles.length > 0 ? articles : [{}]).map((own) => wordsOf(card.given, own))
  return argumentsOf(formulas, functions).flatMap(({ path, node, parameter, names }) => {
    const fault = settings.map((words) => misuse(parameter, names, words)).find((each) => each !== null)
    const { start, end } = node
    return fault
      ? [problemOfFault({ ...fault, start, end }, card.source.locate(path, 'value', { start, end }))]
      : []
  })
}

export type Misused = {
  readonly message: string
  /** Null where the card has been told already. */
  readonly problem: Problem | null
}

/** Misuse in one run: by its own measures, or by results of other runs that it takes as givens. */
export const misusesOfRun = (context: RunContext, words: Words): Misused[] => {
  const { card, article, method, formulas, functions, record, runs } = context
  const given: Readonly<Record<string, GivenText>> = {
    ...card.given,
    ...card.articles[article],
    ...record.given,
  }
  const takesResults = Object.values(given).some(({ form }) => form === 'result')
  if (!method.misuse && !takesResults) return []
  /** The run that a given is a result of, and the measures of that run which the result rests on. */
  const sourceOf = (name: string) => {
    const entry = Object.hasOwn(given, name) ? given[name] : undefined
    const run = entry?.form === 'result' ? runs.get(entry.from) : undefined
    if (entry?.form !== 'result' || !run?.computed) return null
    const { measure } = entry
    const derived = !Object.hasOwn(run.computed.measures, measure)
    const basis = derived ? basisOf(parseCard(run.card).derive, functions)(measure) : []
    return { ...run.computed, names: [measure, ...basis] }
  }
  const known = lazily(
    () => new Set(misusesOfCard(card, method, formulas, functions).map(({ message }) => message)),
  )
  return argumentsOf(formulas, functions).flatMap(({ path, node, parameter, names }): Misused[] => {
    const own = names.filter((name) => sourceOf(name) === null)
    const found = [
      method.misuse?.(parameter, own, words),
      ...names.map((name) => {
        const source = sourceOf(name)
        return source?.method.misuse?.(parameter, [...source.names, ...own], source.givens.words)
      }),
    ].flatMap((fault) => fault ?? [])
    return found.map((fault) => {
      const span = { start: node.start, end: node.end }
      const message = `${fault.message} (${record.id})`
      return {
        message: fault.message,
        problem: known().has(fault.message)
          ? null
          : problemOfFault({ ...fault, ...span, message }, card.source.locate(path, 'value', span)),
      }
    })
  })
}
