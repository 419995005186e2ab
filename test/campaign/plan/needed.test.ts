/** What a measure must be for a criterion to be just met: against closed forms. */
import { describe, expect, it } from 'vitest'
import { neededValue } from '../../../src/campaign/plan/needed.ts'
import { conjuncts, parseFormula, prepareFormulas } from '../../../src/quantity/formula/index.ts'
import type { Node } from '../../../src/quantity/formula/types.ts'

await prepareFormulas()

type Compare = Extract<Node, { type: 'compare' }>

const compare = (text: string): Compare => {
  const node = parseFormula(text)
  const found = node.ok ? conjuncts(node.value) : node
  const [first] = found.ok ? found.value : []
  if (first?.type !== 'compare') throw new Error(text)
  return first
}

describe('the value that is needed', () => {
  it('of a share kept K/(K + h) ≥ s is h·s/(1 − s), from far away on either side', () => {
    for (const near of [1e-3, 1, 1e5]) {
      const found = neededValue(compare('k / (k + h) >= 0.85'), 'k', near, { h: 100 }, {})
      expect(found).toBeCloseTo((100 * 0.85) / 0.15, 6)
    }
  })
  it('of a square root, a quotient, and a limit on the left', () => {
    expect(neededValue(compare('sqrt(x) < 3'), 'x', 1, {}, {})).toBeCloseTo(9, 6)
    expect(neededValue(compare('12 / x < 4'), 'x', 1, {}, {})).toBeCloseTo(3, 6)
    expect(neededValue(compare('5 > x'), 'x', 1, {}, {})).toBeCloseTo(5, 9)
  })
  it('of two candidates is the nearer one', () => {
    // x² − 11 x + 10 = 0 at 1 and 10
    expect(neededValue(compare('x * x - 11 * x + 10 < 0'), 'x', 8, {}, {})).toBeCloseTo(10, 6)
    expect(neededValue(compare('x * x - 11 * x + 10 < 0'), 'x', 1.5, {}, {})).toBeCloseTo(1, 6)
  })
  it('is not there at a pole, where nothing meets it, or for a chain', () => {
    expect(neededValue(compare('1 / (x - 3) < 0'), 'x', 1, {}, {})).toBeNull()
    expect(neededValue(compare('x * x < 0 - 1'), 'x', 1, {}, {})).toBeNull()
    expect(neededValue(compare('1 <= x <= 2'), 'x', 1, {}, {})).toBeNull()
  })
})
