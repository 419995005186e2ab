/** Loads, pressures and flows to be reached, worked out from givens before the test. */

import type { CardRecord } from '../format/types.ts'
import type { Schema } from '../methods/method.ts'
import { substitute } from '../quantity/formula/index.ts'
import type { Node } from '../quantity/formula/types.ts'
import type { Kind } from '../quantity/kinds.ts'
import { lazily } from '../quantity/lazily.ts'
import { exact } from '../quantity/quantity.ts'
import type { Quantity } from '../quantity/types.ts'
import { type CardFormulas, evaluateAll, type Functions } from './formulas.ts'
import type { Inputs } from './inputs.ts'
import type { Target } from './types.ts'
import { measureUnit } from './units.ts'
import { valueText } from './value-text.ts'

export type Worked = {
  readonly targets: Readonly<Record<string, Target>>
  /** The inputs with every target that is also a given of the method in its place. */
  readonly inputs: Inputs
}

type Kinds = ReadonlyMap<string, Kind>

/** Formulas that can be had from what is known, each worked out with its numbers. */
const workOut = (
  card: CardRecord,
  texts: Readonly<Record<string, string>>,
  nodes: ReadonlyMap<string, Node>,
  kindOf: Kinds,
  functions: Functions,
  { numbers, words }: Inputs,
): Record<string, Target> => {
  const values = evaluateAll(nodes, numbers, functions)
  const known: Readonly<Record<string, Quantity>> = { ...numbers, ...values }
  const show = (name: string): string => {
    const quantity = known[name]
    if (!quantity) return words[name] ?? name
    return valueText(quantity, measureUnit(card, name, quantity.dim, kindOf.get(name)))
  }
  const worked: Record<string, Target> = {}
  for (const [name, node] of nodes) {
    const value = values[name]
    if (!value) continue
    const unit = measureUnit(card, name, value.dim, kindOf.get(name))
    const inNumbers = lazily(() => substitute(node, show))
    worked[name] = {
      formula: texts[name] ?? '',
      get worked() {
        return inNumbers()
      },
      value,
      unit,
    }
  }
  return worked
}

const kindsOf = (schema: Schema): Kinds => new Map(schema.givens.map((field) => [field.name, field.kind]))

/** What formulas may name before anything is measured: inputs, and every target by its value. */
export const knownBefore = (
  inputs: Readonly<Record<string, Quantity>>,
  targets: Readonly<Record<string, Target>>,
): Record<string, Quantity> => ({
  ...inputs,
  ...Object.fromEntries(Object.entries(targets).map(([name, { value }]) => [name, value])),
})

export const workTargets = (
  card: CardRecord,
  schema: Schema,
  formulas: CardFormulas,
  functions: Functions,
  inputs: Inputs,
): Worked => {
  const kindOf = kindsOf(schema)
  const targets = workOut(card, card.targets, formulas.targets, kindOf, functions, inputs)
  // A target is what is asked for: as a given of the method it is a setpoint, exact.
  const setpoints = Object.entries(targets).flatMap(([name, { value }]) =>
    kindOf.has(name) || schema.uses?.includes(name) ? [[name, exact(value.value, value.dim)] as const] : [],
  )
  return { targets, inputs: { ...inputs, numbers: { ...inputs.numbers, ...Object.fromEntries(setpoints) } } }
}

/** Derived values that need no reading: what to expect, before the test. */
export const workExpected = (
  card: CardRecord,
  schema: Schema,
  formulas: CardFormulas,
  functions: Functions,
  { targets, inputs }: Worked,
): Readonly<Record<string, Target>> => {
  const known = { ...inputs, numbers: knownBefore(inputs.numbers, targets) }
  return workOut(card, card.derive, formulas.derive, kindsOf(schema), functions, known)
}
