/** A leak as one hole, against the gas dynamics of textbooks. */
import { describe, expect, test } from 'vitest'
import { equivalentHole, jetFlux } from '../../../src/methods/pressure-decay/hole.ts'

describe('the jet', () => {
  test('is choked at 0.0404 p/√T for air in SI (the usual textbook constant, from memory)', () => {
    expect((jetFlux(500_000, 100_000, 300) * Math.sqrt(300)) / 500_000).toBeCloseTo(0.0404, 4)
  })
  test('no longer depends on the lower pressure below 0.528 of the higher (critical ratio of air)', () => {
    expect(jetFlux(200_000, 105_000, 288)).toBe(jetFlux(200_000, 50_000, 288))
    expect(jetFlux(200_000, 106_500, 288)).toBeLessThan(jetFlux(200_000, 105_000, 288))
  })
  test('is Bernoulli’s √(2 ρ Δp) for a small difference (limiting case)', () => {
    const density = 101_325 / (287.0529 * 288.15)
    const bernoulli = Math.sqrt(2 * density * 10)
    expect(jetFlux(101_325, 101_315, 288.15) / bernoulli).toBeCloseTo(1, 3)
  })
})

describe('the hole', () => {
  const givens = (test_pressure: number) => ({ numbers: { test_pressure }, words: {}, fields: {} })
  test('of 1 mm passes 27.4 cm³/s at 2 kPa (by hand: 0.611 · 0.7854 mm² · √(2·2000/1.225) m/s)', () => {
    const flow = 0.611 * 0.7854e-6 * Math.sqrt(4000 / 1.225)
    expect(equivalentHole(flow, givens(2000)) * 1e3).toBeCloseTo(1, 1)
    expect(flow * 1e6).toBeCloseTo(27.4, 0)
  })
  test('grows with the root of the leak', () => {
    expect(equivalentHole(4e-6, givens(-2500)) / equivalentHole(1e-6, givens(-2500))).toBeCloseTo(2, 9)
  })
})
