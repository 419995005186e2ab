/** What a card asks for, taken apart once: its measures in order of dependence, over aggregates, givens and each other. */
import { sameDimension } from '../../quantity/dimension.ts'
import { dimensionOf, namesIn } from '../../quantity/formula/index.ts'
import type { Node } from '../../quantity/formula/types.ts'
import { KINDS, type Kind } from '../../quantity/kinds.ts'
import { keptWith } from '../../quantity/lazily.ts'
import type { Dimension, Fault } from '../../quantity/types.ts'
import { type Aggregate, aggregateDimension, takeApart } from './aggregates.ts'
import type { DeclaredColumn } from './columns.ts'
import type { DeclaredMeasure } from './measures.ts'

export type PlannedMeasure = DeclaredMeasure & {
  /** The formula with the key of each aggregate in its place. */
  readonly rest: Node
  readonly own: readonly Aggregate[]
  /** With those of the measures that it uses. */
  readonly all: readonly Aggregate[]
  /** Names that are neither aggregates nor measures: givens and targets of the card. */
  readonly givens: readonly string[]
  /** Nothing but counts: exact. */
  readonly exact: boolean
}

export type Plan = {
  readonly columns: readonly DeclaredColumn[]
  readonly measures: readonly PlannedMeasure[]
  readonly aggregates: readonly Aggregate[]
  readonly faults: readonly { readonly measure: DeclaredMeasure; readonly fault: Fault }[]
}

type Fields = Readonly<Record<string, unknown>>

const listOf = <T>(raw: unknown): readonly T[] => (Array.isArray(raw) ? (raw as T[]) : [])

const ringFault = (trail: readonly string[], name: string): Fault => ({
  code: 'formula/cycle',
  message: `the formulas of \`measures\` need each other in a ring: ${[...trail.slice(trail.indexOf(name)), name].join(' → ')}`,
  start: 0,
  end: 1,
  why: 'they are evaluated in order of dependence, and a ring has no beginning',
})

const makePlan = (fields: Fields): Plan => {
  const columns = listOf<DeclaredColumn>(fields.columns)
  const declared = new Map(listOf<DeclaredMeasure>(fields.measures).map((measure) => [measure.name, measure]))
  const planned = new Map<string, PlannedMeasure>()
  const faults: { measure: DeclaredMeasure; fault: Fault }[] = []
  const failed = new Set<string>()
  const refuse = (measure: DeclaredMeasure, found: readonly Fault[]): void => {
    failed.add(measure.name)
    faults.push(...found.map((fault) => ({ measure, fault })))
  }
  const visit = (measure: DeclaredMeasure, trail: readonly string[]): void => {
    const { name } = measure
    if (planned.has(name) || failed.has(name)) return
    if (trail.includes(name)) {
      refuse(measure, [ringFault(trail, name)])
      return
    }
    const { node: rest, aggregates: own, faults: found } = takeApart(measure.node, columns)
    if (found.length > 0) {
      refuse(measure, found)
      return
    }
    const keys = new Set(own.map(({ key }) => key))
    const names = namesIn(rest).filter((each) => !keys.has(each))
    const used = names.flatMap((each) => declared.get(each) ?? [])
    for (const other of used) visit(other, [...trail, name])
    // What is wrong with the other one has been said there.
    if (failed.has(name) || used.some((other) => failed.has(other.name))) {
      failed.add(name)
      return
    }
    const below = used.flatMap((other) => planned.get(other.name) ?? [])
    const places = own.flatMap(({ place }) => (place && 'node' in place ? namesIn(place.node) : []))
    const all = [...own, ...below.flatMap((other) => other.all)]
    const givens = [...names.filter((each) => !declared.has(each)), ...places]
    const exact =
      all.length > 0 &&
      givens.length === 0 &&
      all.every((each) => each.name === 'count') &&
      below.every((other) => other.exact)
    planned.set(name, { ...measure, rest, own, all, givens, exact })
  }
  for (const measure of declared.values()) visit(measure, [])
  const aggregates = new Map(
    [...planned.values()].flatMap(({ own }) => own.map((each) => [each.key, each] as const)),
  )
  return { columns, measures: [...planned.values()], aggregates: [...aggregates.values()], faults }
}

/** Taken apart once a card: every estimate of Monte Carlo asks for it. */
export const planOf: (fields: Fields) => Plan = keptWith(makePlan)

/** Dimension of each measure, as far as those of the givens are known; faults where they do not fit together. */
export const dimensionsOf = (
  plan: Plan,
  given: Readonly<Record<string, Dimension | null>>,
): {
  readonly dims: Readonly<Record<string, Dimension>>
  readonly faults: readonly { readonly measure: PlannedMeasure; readonly fault: Fault }[]
} => {
  const aggregates = Object.fromEntries(plan.aggregates.map((each) => [each.key, aggregateDimension(each)]))
  const dims: Record<string, Dimension> = {}
  const faults: { measure: PlannedMeasure; fault: Fault }[] = []
  const known = Object.fromEntries(Object.entries(given).flatMap(([name, dim]) => (dim ? [[name, dim]] : [])))
  const open = new Set(Object.keys(given).filter((name) => given[name] === null))
  const failed = new Set<string>()
  const doubtful = (node: Node): boolean => namesIn(node).some((name) => open.has(name) || failed.has(name))
  for (const measure of plan.measures) {
    const scope = { ...known, ...dims }
    for (const { place, x } of measure.own) {
      if (!place || !('node' in place) || !x || doubtful(place.node)) continue
      const dim = dimensionOf(place.node, scope)
      if (!dim.ok) faults.push(...dim.error.map((fault) => ({ measure, fault })))
      else if (!sameDimension(dim.value, KINDS[x.kind].dim)) {
        const message = `\`${x.name}\` is ${KINDS[x.kind].name}, and the place in \`at\` is not`
        const { start, end } = place.node
        faults.push({ measure, fault: { code: 'formula/dimension-mismatch', message, start, end } })
      }
    }
    const ownNames = new Set(measure.own.map(({ key }) => key))
    const mine = Object.fromEntries(Object.entries(aggregates).filter(([key]) => ownNames.has(key)))
    if (doubtful(measure.rest)) {
      failed.add(measure.name)
      continue
    }
    const dim = dimensionOf(measure.rest, { ...scope, ...mine })
    if (dim.ok) dims[measure.name] = dim.value
    else {
      failed.add(measure.name)
      faults.push(...dim.error.map((fault) => ({ measure, fault })))
    }
  }
  return { dims, faults }
}

const ON_SCALE = /(?:°|deg)[CF]|[℃℉]/

/** Whether a value with the dimension of a temperature is a point on the scale: a difference of two is none. */
const isPoint = (node: Node, points: ReadonlySet<string>): boolean => {
  switch (node.type) {
    case 'name':
      return points.has(node.name)
    case 'number':
      return ON_SCALE.test(node.text) && !/delta/.test(node.text)
    case 'call':
      return node.args.some((arg) => isPoint(arg, points))
    case 'arithmetic': {
      const [left, right] = [isPoint(node.left, points), isPoint(node.right, points)]
      return (node.op === '+' || node.op === '-') && left !== right
    }
    default:
      return false
  }
}

/** The kind under which a measure is shown; undefined where the trade has no name for it. */
export const kindsOfMeasures = (
  plan: Plan,
  dims: Readonly<Record<string, Dimension>>,
): Readonly<Record<string, Kind | undefined>> => {
  const points = new Set(
    plan.aggregates.flatMap(({ key, name, y }) =>
      y.kind === 'temperature' && !['range', 'slope', 'integral', 'count'].includes(name) ? [key] : [],
    ),
  )
  const kinds: Record<string, Kind | undefined> = {}
  for (const { name, rest, exact } of plan.measures) {
    const dim = dims[name]
    if (!dim) continue
    if (sameDimension(dim, KINDS.temperature.dim)) {
      if (isPoint(rest, points)) points.add(name)
      kinds[name] = points.has(name) ? 'temperature' : 'temperature-difference'
    } else if (exact) kinds[name] = 'count'
    else kinds[name] = (Object.keys(KINDS) as Kind[]).find((kind) => sameDimension(KINDS[kind].dim, dim))
  }
  return kinds
}
