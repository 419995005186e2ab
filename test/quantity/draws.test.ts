import { describe, expect, it } from 'vitest'
import { BATCH, isStable, simulatedOf, streamsOf, withDraws } from '../../src/quantity/draws.ts'
import type { Drawn } from '../../src/quantity/monte-carlo.ts'
import { correlation, exact, expanded, standardUncertainty } from '../../src/quantity/quantity.ts'
import { seedOf } from '../../src/quantity/random.ts'
import type { Quantity, Shape } from '../../src/quantity/types.ts'

const source = (
  name: string,
  shape: Shape = 'normal',
  dof = Number.POSITIVE_INFINITY,
  pool = name,
): Drawn => ({
  source: name,
  shape,
  pool,
  dof,
})

/** Trials of each source. */
const draw = (drawn: readonly Drawn[], batch = 0, trials = BATCH): Float64Array[] => {
  const next = streamsOf(drawn, batch)
  const z = new Float64Array(drawn.length)
  const values = drawn.map(() => new Float64Array(trials))
  for (let trial = 0; trial < trials; trial += 1) {
    next(z)
    z.forEach((each, i) => {
      ;(values[i] as Float64Array)[trial] = each
    })
  }
  return values
}

const product = (a: Float64Array, b: Float64Array): number =>
  a.reduce((sum, each, i) => sum + each * (b[i] as number), 0) / a.length

describe('streams of sources', () => {
  it('give one source the same trials whatever is drawn beside it, and in whatever order', () => {
    const [alone] = draw([source('gauge', 'rectangular')])
    const [, beside] = draw([source('other'), source('gauge', 'rectangular'), source('fit', 't', 3, 'fits')])
    expect(beside).toEqual(alone)
  })
  it('give other names and other batches other trials, which do not correlate (4 standard deviations)', () => {
    const [a, b] = draw([source('gauge/gain'), source('gauge/offset')]) as [Float64Array, Float64Array]
    const [later] = draw([source('gauge/gain')], 1) as [Float64Array]
    expect(Math.abs(product(a, b))).toBeLessThan(4 / Math.sqrt(BATCH))
    expect(Math.abs(product(a, later))).toBeLessThan(4 / Math.sqrt(BATCH))
  })
  it('scale what shares a pool by one factor a trial: squares of t correlate, the values do not', () => {
    const [a, b] = draw([source('slope', 't', 5, 'fit'), source('mean', 't', 5, 'fit')], 0, 200_000) as [
      Float64Array,
      Float64Array,
    ]
    expect(Math.abs(product(a, b))).toBeLessThan(0.03)
    // E(t₁²t₂²) of a common χ² with ν = 5: ν²/((ν − 2)(ν − 4)) = 25/3; independent ones give (5/3)².
    const squares = product(
      a.map((x) => x * x),
      b.map((x) => x * x),
    )
    expect(squares).toBeGreaterThan(5)
  })
  it('have unit standard uncertainty, rectangular within ±√3 (JCGM 101, 6.4.2)', () => {
    const [flat] = draw([source('flat', 'rectangular')]) as [Float64Array]
    expect(Math.max(...flat.map(Math.abs))).toBeLessThanOrEqual(Math.sqrt(3))
    expect(simulatedOf(flat).u).toBeCloseTo(1, 1)
  })
  it('begin from the text alone: a seed of 53 bits, unlike for neighbours', () => {
    expect(seedOf('0 gauge')).toBe(seedOf('0 gauge'))
    const seeds = new Set(Array.from({ length: 2000 }, (_, i) => seedOf(`${i} gauge`)))
    expect(seeds.size).toBe(2000)
    expect([...seeds].every(Number.isSafeInteger)).toBe(true)
  })
})

describe('what draws say of a quantity', () => {
  const normal = (): Float64Array => {
    const all = new Float64Array(4 * BATCH)
    for (let batch = 0; batch < 4; batch += 1)
      all.set(draw([source('x')], batch)[0] as Float64Array, batch * BATCH)
    return all
  }
  it('normal: u 1, interval ±1.96, one-sided 1.645 (JCGM 100, G.1), each within the tolerance that is stated', () => {
    const { u, mean, low, high, bound, tolerance } = simulatedOf(normal())
    // Two standard deviations from four batches only: four of them are safe.
    for (const [found, known] of [
      [u, 1],
      [mean, 0],
      [low, -1.959964],
      [high, 1.959964],
    ] as const)
      expect(Math.abs(found - known)).toBeLessThan(2 * tolerance)
    expect(Math.abs(bound - 1.644854)).toBeLessThan(2 * tolerance)
    expect(tolerance).toBeLessThan(0.06)
  })
  it('says of batches that were sorted one by one what the engine’s own sort says of all draws', () => {
    const odd = Float64Array.from({ length: 2.5 * BATCH }, (_, i) =>
      i % 1000 === 7 ? Number.NaN : Math.sin(i * i) + (i < BATCH ? 5 : 0),
    )
    const sorted = [...odd].filter((x) => !Number.isNaN(x)).sort((a, b) => a - b)
    const cut = Math.floor((sorted.length - Math.round(0.95 * sorted.length)) / 2)
    const { low, high, bound, draws } = simulatedOf(odd)
    expect({ low, high, bound, draws }).toEqual({
      low: sorted[cut],
      high: sorted[cut + Math.round(0.95 * sorted.length)],
      bound: sorted[Math.floor(0.95 * sorted.length)],
      draws: odd.length,
    })
  })
  it('is not stable after one batch, and not where another batch says something else', () => {
    expect(isStable(draw([source('x')])[0] as Float64Array)).toBe(false)
    expect(isStable(normal())).toBe(true)
    expect(isStable(normal().map((x, i) => (i < BATCH ? 3 * x : x)))).toBe(false)
  })
  it('± reaches to the farther end of the interval', () => {
    const skewed: Quantity = {
      value: 0,
      dim: [0, 0, 0, 0, 0, 0],
      parts: { x: { u: 1, dof: Number.POSITIVE_INFINITY, pool: 'x', shape: 'normal' } },
      why: [],
      simulated: { mean: 1, u: 1, low: -0.5, high: 3, bound: 2.5, draws: 20_000, tolerance: 0.01 },
    }
    expect(expanded(skewed)).toEqual({ U: 3, k: 3, dof: Number.POSITIVE_INFINITY })
    expect(standardUncertainty(skewed)).toBe(1)
    expect(correlation(skewed, skewed)).toBeCloseTo(1, 12)
  })
  it('leaves exact and not known as they are', () => {
    const count = exact(3, [0, 0, 0, 0, 0, 0])
    expect(withDraws(count, new Float64Array(BATCH).fill(3))).toBe(count)
    const vague: Quantity = { ...count, parts: null, why: ['nobody wrote it down'] }
    expect(withDraws(vague, normal())).toBe(vague)
  })
})
