import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { add, divide, multiply, propagate, scale, subtract } from '../../src/quantity/combine.ts'
import { monteCarlo } from '../../src/quantity/monte-carlo.ts'
import {
  correlation,
  coverageFactor,
  effectiveDof,
  exact,
  expanded,
  fromStated,
  standardUncertainty,
  unknown,
} from '../../src/quantity/quantity.ts'
import { parseStated } from '../../src/quantity/quantity-text.ts'
import type { Part, Quantity } from '../../src/quantity/types.ts'

const NUMBER = [0, 0, 0, 0, 0, 0] as const

function part(u: number, dof = Number.POSITIVE_INFINITY, pool = 'own'): Part {
  return { u, dof, pool, shape: 'normal' }
}
function quantity(value: number, parts: Readonly<Record<string, number>>): Quantity {
  return {
    value,
    dim: NUMBER,
    why: [],
    parts: Object.fromEntries(Object.entries(parts).map(([s, u]) => [s, part(u)])),
  }
}

const anyQuantity = fc
  .tuple(
    fc.double({ min: -1000, max: 1000, noNaN: true }),
    fc.dictionary(
      fc.constantFrom('gauge', 'volume', 'fit', 'baro'),
      fc.double({ min: -5, max: 5, noNaN: true }),
      { noNullPrototype: true },
    ),
  )
  .map(([value, parts]) => quantity(value, parts))

describe('properties', () => {
  test('q − q is exactly 0 with u 0, q / q is 1', () => {
    fc.assert(
      fc.property(anyQuantity, (q) => {
        expect(subtract(q, q).value).toBe(0)
        expect(standardUncertainty(subtract(q, q))).toBe(0)
        const twice = propagate(([a = 0, b = 0]) => a - b, [q, q], NUMBER)
        expect(standardUncertainty(twice)).toBeLessThan(1e-12 * (Math.abs(q.value) + 10))
      }),
    )
  })
  test('a linear function is propagated exactly, source by source', () => {
    const number = fc.double({ min: -20, max: 20, noNaN: true })
    fc.assert(
      fc.property(anyQuantity, anyQuantity, number, number, (p, q, a, b) => {
        const numeric = propagate(([x = 0, y = 0]) => a * x + b * y + 7, [p, q], NUMBER)
        const known = add(scale(p, a), scale(q, b))
        for (const source of ['gauge', 'volume', 'fit', 'baro']) {
          expect(numeric.parts?.[source]?.u ?? 0).toBeCloseTo(known.parts?.[source]?.u ?? 0, 8)
        }
      }),
    )
  })
  test('a correlation lies between −1 and 1, and is symmetric', () => {
    fc.assert(
      fc.property(anyQuantity, anyQuantity, (p, q) => {
        const r = correlation(p, q)
        if (Number.isNaN(r)) return
        expect(Math.abs(r)).toBeLessThanOrEqual(1 + 1e-12)
        expect(r).toBe(correlation(q, p))
      }),
    )
  })
  test('first order agrees with Monte Carlo where the function is nearly straight', () => {
    const inputs = [quantity(10, { a: 0.1, shared: 0.05 }), quantity(4, { b: 0.04, shared: -0.03 })]
    for (const f of [
      ([x = 0, y = 1]: number[]) => x / y,
      ([x = 0, y = 0]: number[]) => Math.sqrt(x * x + y * y),
      ([x = 0, y = 0]: number[]) => Math.exp(y / 10) * Math.log(x),
    ]) {
      const first = standardUncertainty(propagate(f, inputs, NUMBER)) ?? Number.NaN
      const drawn = monteCarlo(f, inputs, 100_000, 42)
      expect((drawn?.u ?? 0) / first).toBeGreaterThan(0.985)
      expect((drawn?.u ?? 0) / first).toBeLessThan(1.015)
    }
  })
})

describe('products and quotients agree with the numerical ones (GUM 5.1.6: relative u in quadrature)', () => {
  const [a, b] = [quantity(3, { a: 0.03, c: 0.01 }), quantity(-2, { b: 0.01, c: 0.02 })]
  test.each([
    ['product', multiply(a, b), propagate(([x = 0, y = 0]) => x * y, [a, b], NUMBER)],
    ['quotient', divide(a, b), propagate(([x = 0, y = 0]) => x / y, [a, b], NUMBER)],
  ])('%s', (_, known, numeric) => {
    for (const source of ['a', 'b', 'c']) {
      expect(numeric.parts?.[source]?.u).toBeCloseTo(known.parts?.[source]?.u ?? Number.NaN, 5)
    }
  })
})

describe('not known is not zero', () => {
  const vague = unknown(5, NUMBER, 'the gauge has no accuracy')
  const sure = quantity(2, { a: 0.1 })
  test('it spreads, with its reason', () => {
    expect(add(vague, sure)).toMatchObject({ value: 7, parts: null, why: ['the gauge has no accuracy'] })
    expect(propagate(([x = 0, y = 0]) => x * y, [vague, sure], NUMBER)).toMatchObject({
      parts: null,
      why: vague.why,
    })
    expect(expanded(add(vague, vague))).toBeNull()
    expect(add(vague, vague).why).toHaveLength(1)
    expect(monteCarlo(([x = 0]) => x, [vague], 10, 1)).toBeNull()
  })
  test('unless it does not matter', () => {
    const smaller = propagate((values) => Math.min(...values), [vague, sure], NUMBER)
    expect(standardUncertainty(smaller)).toBeCloseTo(0.1, 12)
    expect(standardUncertainty(scale(vague, 0))).toBe(0)
  })
  test('a formula that is not defined nearby', () => {
    const root = propagate(([x = 0]) => Math.sqrt(x), [quantity(0.05, { a: 0.1 })], NUMBER)
    expect(root.parts).toBeNull()
    expect(root.why[0]).toContain('not defined')
  })
})

describe('degrees of freedom', () => {
  test('limits: one line keeps its own; known lines give the normal factor', () => {
    const one = { ...quantity(1, {}), parts: { fit: part(0.2, 7, 'fit') } }
    expect(effectiveDof(one)).toBeCloseTo(7, 12)
    expect(coverageFactor(quantity(1, { a: 1 }))).toBeCloseTo(1.959963984540054, 12)
    expect(effectiveDof(exact(3, NUMBER))).toBe(Number.POSITIVE_INFINITY)
    expect(expanded(exact(3, NUMBER))?.U).toBe(0)
  })
  test('parts of one pool are one line; two pools of equal size have twice the degrees of freedom', () => {
    const pooled = { ...quantity(1, {}), parts: { k1: part(3, 6, 'fit'), k2: part(4, 6, 'fit') } }
    expect(standardUncertainty(pooled)).toBe(5)
    expect(effectiveDof(pooled)).toBeCloseTo(6, 12)
    const apart = { ...quantity(1, {}), parts: { k1: part(3, 6, 'one'), k2: part(3, 6, 'two') } }
    expect(effectiveDof(apart)).toBeCloseTo(12, 12)
  })
})

test('a quantity as written is one source', () => {
  const read = parseStated('96.4 ± 0.6 L')
  if (!read.ok) throw new Error('not read')
  const q = fromStated(read.value, 'given:card:tank/volume')
  expect(q.parts).toEqual({
    'given:card:tank/volume': { u: 0.0003, dof: Infinity, pool: 'given:card:tank/volume', shape: 'normal' },
  })
  const bare = parseStated('96.4 L')
  expect(bare.ok && fromStated(bare.value, 's').why).toEqual(['`96.4 L` is written without uncertainty'])
})
