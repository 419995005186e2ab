/** Loads, pressures and flows to be reached, worked out from givens before the test. */

import type { CardRecord } from '../format/types.ts'
import type { Schema } from '../methods/method.ts'
import { substitute } from '../quantity/formula/index.ts'
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

export const workTargets = (
  card: CardRecord,
  schema: Schema,
  formulas: CardFormulas,
  functions: Functions,
  inputs: Inputs,
): Worked => {
  const values = evaluateAll(formulas.targets, inputs.numbers, functions)
  const known: Readonly<Record<string, Quantity>> = { ...inputs.numbers, ...values }
  const kindOf = new Map(schema.givens.map((field) => [field.name, field.kind]))
  const show = (name: string): string => {
    const quantity = known[name]
    if (!quantity) return inputs.words[name] ?? name
    return valueText(quantity, measureUnit(card, name, quantity.dim, kindOf.get(name)))
  }
  const targets: Record<string, Target> = {}
  const numbers: Record<string, Quantity> = { ...inputs.numbers }
  for (const [name, node] of formulas.targets) {
    const value = values[name]
    if (!value) continue
    const unit = measureUnit(card, name, value.dim, kindOf.get(name))
    targets[name] = { formula: card.targets[name] ?? '', worked: substitute(node, show), value, unit }
    // A target is what is asked for: as a given of the method it is a setpoint, exact.
    if (kindOf.has(name)) numbers[name] = exact(value.value, value.dim)
  }
  return { targets, inputs: { ...inputs, numbers } }
}
