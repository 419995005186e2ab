/** Student's t and the normal distribution: a table to 15 digits, GUM table G.2, and an independent library. */
import stdlibNormal from '@stdlib/stats-base-dists-normal-cdf'
import stdlibCdf from '@stdlib/stats-base-dists-t-cdf'
import stdlibQuantile from '@stdlib/stats-base-dists-t-quantile'
import { describe, expect, test } from 'vitest'
import { normalCdf, normalQuantile, tCdf, tQuantile } from '../../src/quantity/distribution.ts'
import { readTable, relativeError } from './data.ts'

const PROBABILITIES: Readonly<Record<string, number>> = {
  'one_sided_0.90': 0.9,
  'one_sided_0.95': 0.95,
  'two_sided_0.95': 0.975,
  'two_sided_0.99': 0.995,
  'two_sided_0.6827': normalCdf(1),
  'two_sided_0.9545': normalCdf(2),
  'two_sided_0.9973': normalCdf(3),
}

test.each(readTable('student_t_quantiles'))('t table (mpmath, 15 digits), $df degrees of freedom', (row) => {
  for (const [name, p] of Object.entries(PROBABILITIES)) {
    expect(relativeError(tQuantile(p, Number(row.df)), Number(row[name])), name).toBeLessThan(1e-12)
  }
})

test.each([
  [1, 12.71],
  [4, 2.78],
  [10, 2.23],
  [30, 2.04],
  [100, 1.984],
])('GUM table G.2: t95(%d) = %d', (dof, printed) => {
  expect(Math.abs(tQuantile(0.975, dof) - printed)).toBeLessThan(printed > 10 || printed < 2 ? 0.005 : 0.0051)
})

describe('@stdlib, an independent program', () => {
  const dofs = [0.7, 1, 2.5, 4, 9, 16.7413663, 47, 320, 9_999, 250_000]
  test.each(dofs)('t quantile and probability, %d degrees of freedom', (dof) => {
    for (const p of [1e-6, 0.001, 0.05, 0.3, 0.6, 0.95, 0.9999]) {
      const t = stdlibQuantile(p, dof)
      expect(relativeError(tQuantile(p, dof), t), `quantile ${p}`).toBeLessThan(1e-9)
      expect(relativeError(tCdf(t, dof), stdlibCdf(t, dof)), `cdf ${t}`).toBeLessThan(1e-9)
    }
  })
  test('normal probability into the far tail', () => {
    for (const z of [-30, -12, -5, -2.9, -2.8, -1, 0, 0.4, 2, 6]) {
      expect(relativeError(normalCdf(z), stdlibNormal(z, 0, 1)), `z ${z}`).toBeLessThan(1e-12)
    }
  })
})

test('JCGM 106, one-sided z: 0.80 0.90 0.95 0.99 0.999', () => {
  const z = [0.8, 0.9, 0.95, 0.99, 0.999].map((p) => Math.round(normalQuantile(p) * 1e6) / 1e6)
  expect(z).toEqual([0.841621, 1.281552, 1.644854, 2.326348, 3.090232])
})

test('JCGM 106: guard band from t with 9 degrees of freedom, s 0.20', () => {
  expect(0.2 * tQuantile(0.95, 9)).toBeCloseTo(0.3666226, 6)
})

test('t joins the normal without a step where the method changes', () => {
  const below = tQuantile(0.975, 999_999)
  const above = tQuantile(0.975, 1_000_001)
  expect(below - above).toBeGreaterThan(0)
  expect(relativeError(below, above)).toBeLessThan(1e-11)
  expect(tQuantile(0.975, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.975))
})

test('outside their ranges they give no number', () => {
  for (const value of [tQuantile(1.2, 5), tQuantile(0.5, 0), tCdf(Number.NaN, 3), normalQuantile(-0.1)]) {
    expect(value).toBeNaN()
  }
})
