/** Fields by name and numbers in SI, for tests that read texts. */
import { method } from '../../../src/methods/pressure-decay/index.ts'
import { parseUnit } from '../../../src/quantity/unit-text.ts'

export const fieldOf = (part: 'columns' | 'givens' | 'measures', name: string) => {
  const field = [...method.schema[part]].find((each) => each.name === name)
  if (!field) throw new Error(`no such name among ${part}: ${name}`)
  return field
}

export const siOf = (value: number, text: string): number => {
  const unit = parseUnit(text)
  if (!unit.ok) throw new Error(`no unit: ${text}`)
  return value * unit.value.factor + unit.value.offset
}
