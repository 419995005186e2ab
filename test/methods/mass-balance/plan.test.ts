/** Limits on the scale by hand, U against the engine, and what is advised after. */
import { expect, test } from 'vitest'
import { method } from '../../../src/methods/mass-balance/index.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import { givensOf, measured, rehearsed, type Setup } from '../bench.ts'
import { given } from '../parts.ts'
import { advised, asked, known, limit, numbersIn, planned, sentences } from '../plan-bench.ts'

const setup: Setup = {
  method,
  inputs: { mass: given(2, 'mass'), chord: given(0.25, 'length'), balance_arm: given(-0.1, 'length') },
  instruments: {
    reading: asked(1e-3, 5e-4, { range: { low: 0, high: 2 } }),
    arm: asked(1e-3, 5e-4, { id: 'tape' }),
  },
}
const limits = [limit('unbalance', 'below', 0.01), limit('unbalance', 'above', -0.03)]

test('by hand: 10 g·m one chord of 250 mm aft are 40 g, −30 g·m are −120 g, which a test weight must outweigh', () => {
  const plan = planned(setup, { limits })
  expect(numbersIn(plan, /at most/)[0]).toBeCloseTo(0.04, 12)
  expect(numbersIn(plan, /at least/)[0]).toBeCloseTo(-0.12, 12)
  const [weight] = numbersIn(plan, /test weight of/)
  expect(weight).toBeGreaterThan(0.12)
  expect(weight).toBeCloseTo(0.15, 12)
})

test('U by scale and tape is what the engine makes of it without scatter', () => {
  const [U] = numbersIn(planned(setup, { limits }), /Scale and tape alone/)
  const columns = rehearsed(setup, { unbalance: 0.03, arm: 0.25, noise: 0, repeats: 5 }, 1)
  const found = measured(setup, columns).measures.unbalance
  const ratio = (U ?? Number.NaN) / (found ? (expanded(found)?.U ?? 0) : 0)
  expect(ratio).toBeGreaterThan(0.8)
  expect(ratio).toBeLessThan(1.25)
})

test('as often as a scatter of before asks for, and says where no number of readings is enough', () => {
  const earlier = (s: number) => [{ run: 'before', measures: known({ repeatability: [s, 'mass'] }) }]
  const rows = (s: number) => planned(setup, { limits, earlier: earlier(s) }).readings?.rows.length
  expect(rows(1e-3)).toBe(5)
  expect(rows(1.2e-2)).toBeGreaterThan(5)
  expect(sentences(planned(setup, { limits, earlier: earlier(1) }))).toMatch(/Free the hinges first/)
})

test('without a chord the limit on the scale is not known', () => {
  const bare = { ...setup, inputs: { mass: given(2, 'mass') } }
  expect(sentences(planned(bare, { limits }))).toMatch(/not known: the card gives no `chord`/)
})

test('advice: 15 g·m with 10 allowed, by a weight 100 mm ahead: 50 g to the limit, 150 g to balance, by hand', () => {
  const columns = rehearsed(setup, { unbalance: 0.015, arm: 0.25, noise: 0 }, 1)
  const { measures } = measured(
    { ...setup, instruments: {} },
    rehearsed({ ...setup, instruments: {} }, { unbalance: 0.015, noise: 0 }, 1),
  )
  const text = advised(method, measures, 'unbalance', ['below', 0.01], givensOf(setup), columns)
  expect(text).toMatch(/tail-heavy beyond the limit by 0.005 kg·m/)
  expect(text).toMatch(/50 g more to stand on the limit, and 150 g more to balance/)
  expect(advised(method, measures, 'unbalance', ['below', 0.02], givensOf(setup))).toBe('')
})
