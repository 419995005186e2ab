/** The formulas of a card, parsed once, and evaluated in the order in which they need each other. */

import type { CardRecord } from '../format/types.ts'
import type { Method } from '../methods/method.ts'
import { evaluateQuantity, namesIn, parseFormula } from '../quantity/formula/index.ts'
import type { FormulaFunction, Node } from '../quantity/formula/types.ts'
import type { Fault, Quantity, Result } from '../quantity/types.ts'

export type Functions = Readonly<Record<string, FormulaFunction>>

export type CardFormulas = {
  readonly targets: ReadonlyMap<string, Node>
  readonly derive: ReadonlyMap<string, Node>
  readonly criteria: ReadonlyMap<string, Node>
  readonly faults: readonly { readonly path: readonly string[]; readonly fault: Fault }[]
}

const merged = new WeakMap<Method, { readonly general: Functions; readonly all: Functions }>()

/** Merged once a method: runs are many, and what is found out about formulas is kept by their functions. */
export const functionsFor = (method: Method | undefined, general: Functions): Functions => {
  if (!method) return general
  const known = merged.get(method)
  if (known?.general === general) return known.all
  const all = { ...general, ...method.functions }
  merged.set(method, { general, all })
  return all
}

export const parseCard = (card: CardRecord): CardFormulas => {
  const faults: { path: readonly string[]; fault: Fault }[] = []
  const parse = (
    texts: readonly (readonly [string, string])[],
    path: (name: string) => readonly string[],
  ) => {
    const nodes = new Map<string, Node>()
    for (const [name, text] of texts) {
      const node = parseFormula(text)
      if (node.ok) nodes.set(name, node.value)
      else faults.push(...node.error.map((fault) => ({ path: path(name), fault })))
    }
    return nodes
  }
  return {
    targets: parse(Object.entries(card.targets), (name) => ['targets', name]),
    derive: parse(Object.entries(card.derive), (name) => ['derive', name]),
    criteria: parse(
      card.criteria.map((criterion) => [criterion.id, criterion.accept] as const),
      (id) => ['criteria', id, 'accept'],
    ),
    faults,
  }
}

/** The ring of names in which formulas need each other; empty where there is none. */
export const findRing = (formulas: ReadonlyMap<string, Node>, functions: Functions): readonly string[] => {
  const done = new Set<string>()
  const walk = (name: string, trail: readonly string[]): readonly string[] => {
    if (trail.includes(name)) return [...trail.slice(trail.indexOf(name)), name]
    const node = formulas.get(name)
    if (!node || done.has(name)) return []
    for (const next of namesIn(node, functions)) {
      const ring = walk(next, [...trail, name])
      if (ring.length > 0) return ring
    }
    done.add(name)
    return []
  }
  for (const name of formulas.keys()) {
    const ring = walk(name, [])
    if (ring.length > 0) return ring
  }
  return []
}

/** Values of all formulas that can be had from `scope`; the others are left out. Formulas may use each other. */
export const evaluateAll = (
  formulas: ReadonlyMap<string, Node>,
  scope: Readonly<Record<string, Quantity>>,
  functions: Functions,
): Readonly<Record<string, Quantity>> => {
  const values: Record<string, Quantity> = {}
  const visiting = new Set<string>()
  const visit = (name: string): void => {
    const node = formulas.get(name)
    if (!node || name in values || visiting.has(name)) return
    visiting.add(name)
    for (const next of namesIn(node, functions)) visit(next)
    const value: Result<Quantity> = evaluateQuantity(node, { ...scope, ...values }, functions)
    if (value.ok && Number.isFinite(value.value.value)) values[name] = value.value
  }
  for (const name of formulas.keys()) visit(name)
  return values
}

/** Measures that a derived one is made of, through other derived ones. */
export const basisOf = (
  derive: ReadonlyMap<string, Node>,
  functions: Functions,
): ((measure: string) => readonly string[]) => {
  const collect = (measure: string, seen: Set<string>): void => {
    const node = derive.get(measure)
    if (!node) return
    for (const name of namesIn(node, functions)) {
      if (seen.has(name)) continue
      seen.add(name)
      collect(name, seen)
    }
  }
  return (measure) => {
    const seen = new Set<string>()
    collect(measure, seen)
    return [...seen]
  }
}
