/** JCGM 101:2008 clause 9: propagation of distributions. Tolerances are several times the scatter of the draws. */
import { describe, expect, test } from 'vitest'
import { propagate } from '../../src/quantity/combine.ts'
import { monteCarlo } from '../../src/quantity/monte-carlo.ts'
import { expanded, standardUncertainty } from '../../src/quantity/quantity.ts'
import type { Quantity, Shape } from '../../src/quantity/types.ts'

const NUMBER = [0, 0, 0, 0, 0, 0] as const
const DRAWS = 100_000

function input(
  source: string,
  value: number,
  u: number,
  shape: Shape,
  dof = Number.POSITIVE_INFINITY,
): Quantity {
  return { value, dim: NUMBER, parts: { [source]: { u, dof, pool: source, shape } }, why: [] }
}
const sum = (values: number[]) => values.reduce((total, value) => total + value, 0)
const four = (shape: Shape, last = 1) => [1, 1, 1, last].map((u, i) => input(`x${i}`, 0, u, shape))

describe('JCGM 101, 9.2: additive model', () => {
  test('9.2.2: four normals: u 2.00, ±3.92', () => {
    const result = monteCarlo(sum, four('normal'), DRAWS, 1)
    expect(result?.u).toBeCloseTo(2, 1)
    expect(result?.interval[1]).toBeCloseTo(3.92, 1)
    expect(result?.interval[0]).toBeCloseTo(-3.92, 1)
  })
  test('9.2.3: four rectangulars: ±3.8794 = 2√3 (2 − (3/5)^¼), where first order gives 3.92', () => {
    const result = monteCarlo(sum, four('rectangular'), 400_000, 2)
    const limit = 2 * Math.sqrt(3) * (2 - (3 / 5) ** 0.25)
    expect(Math.abs((result?.interval[1] ?? 0) - limit)).toBeLessThan(0.02)
    expect(Math.abs((result?.interval[0] ?? 0) + limit)).toBeLessThan(0.02)
    expect(expanded(propagate(sum, four('rectangular'), NUMBER))?.U).toBeCloseTo(3.92, 2)
  })
  test('9.2.4: one rectangular ten times wider: u √103, ±17.0, where first order gives 19.9', () => {
    const result = monteCarlo(sum, four('rectangular', 10), DRAWS, 3)
    expect(result?.u).toBeCloseTo(Math.sqrt(103), 1)
    expect(result?.interval[1]).toBeCloseTo(17, 0)
    expect(Math.abs((result?.interval[1] ?? 0) - 17.0)).toBeLessThan(0.12)
    expect(expanded(propagate(sum, four('rectangular', 10), NUMBER))?.U).toBeCloseTo(19.9, 1)
  })
  test('GUM G.2.2: three equal rectangulars: k 1.937 for 95 %', () => {
    const result = monteCarlo(sum, four('rectangular').slice(1), 400_000, 4)
    expect(Math.abs((result?.interval[1] ?? 0) / Math.sqrt(3) - 1.937)).toBeLessThan(0.012)
  })
})

describe('JCGM 101, 9.3: mass calibration (mg)', () => {
  const inputs = [
    input('mR', 100_000, 0.05, 'normal'),
    input('dmR', 1.234, 0.02, 'normal'),
    input('air', 1.2, 0.1 / Math.sqrt(3), 'rectangular'),
    input('W', 8000, 1000 / Math.sqrt(3), 'rectangular'),
    input('R', 8000, 50 / Math.sqrt(3), 'rectangular'),
  ]
  const deviation = ([mR = 0, dmR = 0, air = 0, W = 1, R = 1]: number[]) =>
    (mR + dmR) * (1 + (air - 1.2) * (1 / W - 1 / R)) - 100_000

  test('first order: 1.2340, u 0.0539, [1.1285, 1.3395]', () => {
    const result = propagate(deviation, inputs, NUMBER)
    expect(result.value).toBeCloseTo(1.234, 6)
    expect(standardUncertainty(result)).toBeCloseTo(0.0538516, 6)
    expect(result.value - (expanded(result)?.U ?? 0)).toBeCloseTo(1.1285, 4)
  })
  test('Monte Carlo: u 0.0754, [1.0834, 1.3825]', () => {
    const result = monteCarlo(deviation, inputs, 300_000, 5)
    expect(Math.abs((result?.u ?? 0) - 0.0754793)).toBeLessThan(0.0005)
    expect(Math.abs((result?.interval[0] ?? 0) - 1.0834)).toBeLessThan(0.0025)
    expect(Math.abs((result?.interval[1] ?? 0) - 1.3825)).toBeLessThan(0.0025)
  })
})

test('JCGM 101, 9.4 (x₁ = 0): u 50e-6 where first order gives 0', () => {
  const inputs = [input('x1', 0, 0.005, 'normal'), input('x2', 0, 0.005, 'normal')]
  const squares = ([a = 0, b = 0]: number[]) => a * a + b * b
  const result = monteCarlo(squares, inputs, DRAWS, 6)
  expect(result?.mean).toBeCloseTo(50e-6, 6)
  expect(result?.u).toBeCloseTo(50e-6, 6)
  // Bare first order says 0; the larger side of the extremum at least says that something is uncertain.
  const u = standardUncertainty(propagate(squares, inputs, NUMBER)) ?? 0
  expect(u).toBeGreaterThan(25e-6)
  expect(u).toBeLessThan(50e-6)
})

test('JCGM 101, 6.4.9: t with 5 degrees of freedom has the standard deviation √(5/3) and the t interval', () => {
  const result = monteCarlo(sum, [input('x', 0, 1, 't', 5)], DRAWS, 7)
  expect(Math.abs((result?.u ?? 0) - Math.sqrt(5 / 3))).toBeLessThan(0.04)
  expect(Math.abs((result?.interval[1] ?? 0) - 2.57058184)).toBeLessThan(0.06)
})

test('the same seed gives the same draws, another seed others', () => {
  const draw = (seed: number) => monteCarlo(sum, four('normal'), 100, seed)?.samples
  expect(draw(11)).toEqual(draw(11))
  expect(draw(11)).not.toEqual(draw(12))
})
