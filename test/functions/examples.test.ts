/** The example of every function, read and worked out as a card's formula would be. */
import { beforeAll, expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { evaluate, parseFormula, prepareFormulas } from '../../src/quantity/formula/index.ts'
import { parseStated } from '../../src/quantity/quantity-text.ts'

beforeAll(() => prepareFormulas())

test.each(Object.values(FUNCTIONS).map(({ name, example }) => [name, example] as const))(
  '%s',
  (_, { formula, value }) => {
    const node = parseFormula(formula)
    const expected = parseStated(value)
    if (!node.ok || !expected.ok) throw new Error(`${formula} → ${value} cannot be read`)
    const result = evaluate(node.value, {}, FUNCTIONS)
    if (!result.ok) throw new Error(JSON.stringify(result.error))
    expect(Math.abs(result.value / expected.value.value - 1)).toBeLessThan(2e-6)
  },
)
