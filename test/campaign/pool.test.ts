import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { poolQuantities } from '../../src/campaign/pool.ts'
import { standardUncertainty } from '../../src/quantity/quantity.ts'
import type { Part, Quantity } from '../../src/quantity/types.ts'

const part = (u: number): Part => ({ u, dof: Number.POSITIVE_INFINITY, pool: 'p', shape: 'normal' })

const quantity = (value: number, parts: Record<string, number> | null): Quantity => ({
  value,
  dim: [0, 0, 0, 0, 0, 0],
  parts:
    parts &&
    Object.fromEntries(Object.entries(parts).map(([source, u]) => [source, { ...part(u), pool: source }])),
  why: parts ? [] : ['the gauge states no accuracy'],
})

describe('pooled repeats', () => {
  it('average as independent results do: two of u 1 give u 1/√2 (GUM 4.2.3)', () => {
    const pooled = poolQuantities([quantity(1, { a: 1 }), quantity(3, { b: 1 })])
    expect(pooled.value).toBeCloseTo(2, 12)
    expect(standardUncertainty(pooled)).toBeCloseTo(Math.SQRT1_2, 12)
  })
  it('weigh by what is independent: weighted mean of 10 ± 1 and 13 ± 2 is 10.6 ± 0.894 (by hand)', () => {
    const pooled = poolQuantities([quantity(10, { a: 1 }), quantity(13, { b: 2 })])
    expect(pooled.value).toBeCloseTo(10.6, 12)
    expect(standardUncertainty(pooled)).toBeCloseTo(Math.sqrt(0.8), 12)
  })
  it('do not average out what they share: one gauge read twice stays one gauge', () => {
    const pooled = poolQuantities([quantity(1, { a: 0.1, gauge: 1 }), quantity(1, { b: 0.1, gauge: 1 })])
    expect(standardUncertainty(pooled)).toBeCloseTo(Math.sqrt(1 + 0.01 / 2), 12)
  })
  it('keep the sign of shared sources', () => {
    const pooled = poolQuantities([quantity(1, { a: 0.1, gauge: 1 }), quantity(1, { b: 0.1, gauge: -1 })])
    expect(pooled.parts?.gauge?.u).toBeCloseTo(0, 12)
  })
  it('stay not known where one of them is', () => {
    const pooled = poolQuantities([quantity(1, { a: 1 }), quantity(3, null)])
    expect(pooled.parts).toBeNull()
    expect(pooled.why).toEqual(['the gauge states no accuracy'])
  })
  it('do not depend on the order of the runs', () => {
    const one = fc.record({
      value: fc.double({ min: -10, max: 10, noNaN: true }),
      u: fc.double({ min: 0.1, max: 5, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 6 }), (list) => {
        const all = list.map(({ value, u }, index) => quantity(value, { [`own${index}`]: u, gauge: 0.3 }))
        const forth = poolQuantities(all)
        const back = poolQuantities(all.toReversed())
        expect(back.value).toBeCloseTo(forth.value, 9)
        expect(standardUncertainty(back)).toBeCloseTo(standardUncertainty(forth) ?? Number.NaN, 9)
      }),
    )
  })
})
