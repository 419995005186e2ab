import { describe, expect, it } from 'vitest'
import { propagate } from '../../src/quantity/combine.ts'
import { standardUncertainty } from '../../src/quantity/quantity.ts'
import { sensitivities } from '../../src/quantity/sensitivity.ts'
import type { Dimension, Quantity } from '../../src/quantity/types.ts'

const ONE: Dimension = [0, 0, 0, 0, 0, 0]
const quantity = (value: number, parts: Record<string, number>): Quantity => ({
  value,
  dim: ONE,
  parts: Object.fromEntries(
    Object.entries(parts).map(([source, u]) => [
      source,
      { u, dof: Number.POSITIVE_INFINITY, pool: source, shape: 'normal' as const },
    ]),
  ),
  why: [],
})
const difference = ([a = 0, b = 0]: number[]) => Math.abs(a - b)

describe('at a corner', () => {
  it('|x| at 0 is as uncertain as x: both sides must not cancel', () => {
    expect(Math.abs(sensitivities(([x = 0]) => Math.abs(x), [0], [0.3])[0] ?? 0)).toBeCloseTo(1, 9)
  })
  it('|a − b| of equal readings is as uncertain as a − b', () => {
    const q = propagate(difference, [quantity(5, { a: 0.3 }), quantity(5, { b: 0.4 })], ONE)
    expect(standardUncertainty(q)).toBeCloseTo(0.5, 9)
  })
  it('and what both share still cancels', () => {
    const q = propagate(
      difference,
      [quantity(5, { a: 0.3, gauge: 2 }), quantity(5, { b: 0.4, gauge: 2 })],
      ONE,
    )
    expect(standardUncertainty(q)).toBeCloseTo(0.5, 6)
  })
  it('near the corner the branch counts that the value is on', () => {
    expect(sensitivities(([x = 0]) => Math.abs(x), [0.1], [0.3])[0]).toBeCloseTo(1, 9)
    expect(sensitivities(([x = 0]) => Math.max(x, 0), [-0.1], [0.3])[0]).toBeGreaterThan(0.3)
  })
  it('at an extremum the larger side counts, not zero (first order alone would say u = 0, JCGM 101 9.4)', () => {
    const [slope] = sensitivities(([x = 0]) => x * x, [0], [0.3])
    expect(Math.abs(slope ?? 0)).toBeCloseTo(0.3, 9)
  })
})

describe('elsewhere', () => {
  it('are the central differences, as in the GUM', () => {
    expect(sensitivities(([x = 0, y = 0]) => x * y, [3, 4], [0.1, 0.2])).toEqual([
      expect.closeTo(4, 9),
      expect.closeTo(3, 9),
    ])
  })
  it('an input without uncertainty is not moved', () => {
    expect(sensitivities(([x = 0]) => (x === 2 ? 1 : Number.NaN), [2], [0])).toEqual([0])
  })
})
