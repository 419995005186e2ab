/** Catch time and amounts against hand sums, against the engine, and what is advised after. */
import { describe, expect, test } from 'vitest'
import { catchTime, roomNeeded } from '../../../src/methods/fuel-flow/catch-time.ts'
import { method } from '../../../src/methods/fuel-flow/index.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import { givensOf, measured, rehearsed, type Setup } from '../bench.ts'
import { given, known } from '../parts.ts'
import { advised, asked, limit, numbersIn, numericColumn, planned, sentences } from '../plan-bench.ts'

const scale = asked(0.015, 0.005, { range: { low: 0, high: 10 } })
const setup = (more: Partial<Setup> = {}): Setup => ({
  method,
  // 20 L/h of petrol of 720 kg/m³: 4 g/s; by gravity 150 %, 6 g/s (14 CFR 23.955(b), as before amendment 64).
  inputs: {
    required: given(20e-3 / 3600, 'volume-flow'),
    density: given(720, 'density'),
    hold: given(90, 'time'),
    time_error: given(0.3, 'time'),
  },
  words: { feed: 'gravity' },
  instruments: { mass: scale },
  ...more,
})

describe('the room that a flow needs', () => {
  test('by hand: digits of 10 g alone over 600 g, 1.645 · 10/√6/600', () => {
    const coarse = asked(0, 0.01)
    expect(roomNeeded(0.01, 60, coarse, 0, 'whole')).toBeCloseTo((1.645 * 10) / Math.sqrt(6) / 600, 9)
  })
  test('by hand: a hand of 0.3 s over a minute, 1.645 · 0.5 %', () => {
    expect(roomNeeded(0.01, 60, asked(0, 0), 0.3, 'whole')).toBeCloseTo(1.645 * 0.005, 12)
  })
  test('is what the engine makes of such readings', () => {
    for (const lasts of [30, 90, 300]) {
      const columns = rehearsed(setup(), { lasts, noise: 0, flow: 6e-3 / 720 }, 1)
      const { measures } = measured(setup(), columns)
      for (const [name, part] of [
        ['flow_ratio', 'whole'],
        ['late_ratio', 'late'],
      ] as const) {
        const u = measures[name] ? standardUncertainty(measures[name]) : null
        const ratio = roomNeeded(6e-3, lasts, scale, 0.3, part) / (1.645 * (u ?? Number.NaN))
        expect(ratio, `${name} after ${lasts} s`).toBeGreaterThan(0.75)
        expect(ratio, `${name} after ${lasts} s`).toBeLessThan(1.35)
      }
    }
  })
  test('after the catch time it is just the room there is; none where the gain takes it all', () => {
    for (const room of [0.01, 0.05, 0.25]) {
      const time = catchTime(room, 6e-3, scale, 0.3, 'late')
      expect(roomNeeded(6e-3, time ?? 0, scale, 0.3, 'late')).toBeCloseTo(room, 9)
    }
    expect(catchTime(0.01, 6e-3, { ...scale, gain: 0.01 }, 0.3, 'whole')).toBeNull()
    expect(roomNeeded(6e-3, 60, { ...scale, offset: null }, 0.3, 'whole')).toBeNaN()
  })
})

describe('the plan', () => {
  test('by hand: 20 L/h, 150 %, 90 s of 720 kg/m³ are 540 g; each row in proportion', () => {
    const plan = planned(setup())
    expect(numbersIn(plan, /times the consumption/)[0]).toBeCloseTo(0.54, 9)
    const [times, amounts] = ['time', 'just enough'].map((title) => numericColumn(plan.readings, title))
    expect(times?.at(-1)).toBe(90)
    amounts?.forEach((amount, row) => {
      expect(amount).toBeCloseTo(6e-3 * (times?.[row] ?? 0), 9)
    })
    expect(amounts?.length).toBeGreaterThanOrEqual(5)
  })
  test('a pump needs 125 %', () => {
    const pump = setup({ words: { feed: 'pump' } })
    expect(numbersIn(planned(pump), /times the consumption/)[0]).toBeCloseTo(0.45, 9)
  })
  test('plans with petrol where the density is measured on the day, and says so', () => {
    const { density: _, ...inputs } = setup().inputs
    expect(sentences(planned(setup({ inputs })))).toMatch(/for 720 kg\/m³; the density of the day decides/)
  })
  test('a small can is out of range, a longer catch than the card has is said', () => {
    const can = setup({ instruments: { mass: asked(0.015, 0.005, { range: { low: 0, high: 0.5 } }) } })
    expect(sentences(planned(can))).toMatch(/Out of range/)
    const coarse = setup({ instruments: { mass: asked(0.1, 0.05) } })
    expect(sentences(planned(coarse, { limits: [limit('late_ratio', 'above', 1)] }))).toMatch(
      /longer than the card/,
    )
  })
  test('the head comes down by what its tape may be wrong by, on a whole digit', () => {
    const tape = setup({
      inputs: { ...setup().inputs, least_head: given(0.42, 'length') },
      instruments: { mass: scale, head: asked(3e-3, 1e-3) },
    })
    // 420 mm − 1.645 · √(1.5² + 1/12) mm = 417.5 mm, by hand.
    expect(numbersIn(planned(tape), /until the head reads/)[0]).toBeCloseTo(0.417, 9)
  })
})

test('advice says what is missing, and what head would make up for it', () => {
  const low = setup({
    inputs: {
      ...setup().inputs,
      time_error: given(0, 'time'),
      least_head: given(0.4, 'length'),
      attitude: known('attitude', 0.2, 0.001, 'angle'),
    },
    instruments: { mass: asked(0, 0), head: asked(0, 0) },
  })
  const columns = rehearsed(
    low,
    { flow: (0.8 * 6e-3) / 720, noise: 0, first_head: 0.4, last_head: 0.39, lasts: 90 },
    1,
  )
  const { measures } = measured(low, columns)
  const text = advised(method, measures, 'flow_ratio', ['above', 1], givensOf(low), columns)
  expect(text).toMatch(/20 % of what is asked is missing, 0.1 L\/min/)
  // 390 mm/0.8 and 390 mm/0.8², by hand.
  expect(text).toMatch(/490 mm \(long thin line\) to 610 mm/)
  expect(advised(method, measures, 'mass_flow', ['above', 1], givensOf(low), columns)).toBe('')
})
