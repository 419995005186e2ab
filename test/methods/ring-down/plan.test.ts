/** What noise alone leaves unknown of the damping, against the engine; sampling and length by hand. */
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/ring-down/index.ts'
import { dampingNoise } from '../../../src/methods/ring-down/plan.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import { measured, rehearsed, type Setup } from '../bench.ts'
import { asked, known, limit, numbersIn, planned, sentences } from '../plan-bench.ts'

const setup: Setup = { method, inputs: {}, instruments: {} }
const banded: Setup = { ...setup, fields: { band: { low: 10, high: 40 } } }

describe('damping by noise alone (Cramér and Rao)', () => {
  test.each([
    [0.02, 0.005, 50],
    [0.01, 0.01, 20],
    [0.05, 0.003, 40],
  ])('ζ %f, noise %f, %i readings a turn: as the engine says', (damping, noise, each) => {
    const truth = {
      frequency: 10,
      damping_ratio: damping,
      noise,
      rate: 10 * each,
      duration: 4 / (2 * Math.PI * 10 * damping),
    }
    const us = Array.from({ length: 5 }, (_, seed) => {
      const found = measured(setup, rehearsed(setup, truth, seed + 1)).measures.damping_ratio
      return (found && standardUncertainty(found)) ?? Number.NaN
    })
    const mean = us.reduce((sum, u) => sum + u, 0) / us.length
    const ratio = (damping * dampingNoise(noise, damping, each)) / mean
    expect(ratio).toBeGreaterThan(0.7)
    expect(ratio).toBeLessThan(1.2)
  })
  test('falls with the square root of the readings a turn', () => {
    expect(dampingNoise(0.01, 0.02, 40) / dampingNoise(0.01, 0.02, 10)).toBeCloseTo(0.5, 12)
  })
})

describe('the plan', () => {
  test('by hand: 10 Hz to 40 Hz at 2 % takes 400 readings a second and 4/(2π·0.02) = 32 turns, 3.2 s', () => {
    const plan = planned(banded, { limits: [limit('damping_ratio', 'above', 0.02)] })
    expect(numbersIn(plan, /Sample at/)[0]).toBe(400)
    const [lasts] = numbersIn(plan, /Record from before/)
    expect(lasts).toBeCloseTo(4 / (2 * Math.PI * 0.02 * 10), 9)
    expect(sentences(plan)).toMatch(/32 turns/)
  })
  test('by hand: digits of 0.05 make 3 % of a swing of 0.05/√12/0.03', () => {
    const sensor = { ...banded, instruments: { signal: asked(1, 0.05, { range: { low: -0.4, high: 0.4 } }) } }
    const plan = planned(sensor)
    expect(numbersIn(plan, /swing must be/)[0]).toBeCloseTo(0.05 / Math.sqrt(12) / 0.03, 9)
    expect(sentences(plan)).toMatch(/Out of range/)
  })
  test('says by how much finer a record like the last one must be sampled', () => {
    const earlier = (residual: number) => [
      {
        run: 'before',
        measures: known({
          frequency: [20, 'frequency'],
          damping_ratio: [0.02, 'number'],
          fit_residual: [residual, 'number'],
        }),
      },
    ]
    const limits = [limit('damping_ratio', 'above', 0.0199)]
    expect(sentences(planned(banded, { limits, earlier: earlier(0.02) }))).toMatch(/sample \d+ times as fast/)
    expect(sentences(planned(banded, { limits, earlier: earlier(0.001) }))).not.toMatch(/times as fast/)
    expect(numbersIn(planned(banded, { earlier: earlier(0.01) }), /Record from before/)[1]).toBe(20)
  })
  test('without band, limit and run nothing is known of it', () => {
    expect(sentences(planned(setup))).toMatch(/How fast to sample and how long is not known/)
    expect(planned(setup).readings?.rows.length).toBe(3)
  })
})
