/** 1,000 simulated runs each: the 95 % interval holds the truth in 93 to 97.5 %; no false pass, and a fit article passes. */
import { describe, expect, test } from 'vitest'
import { certified } from '../../../src/methods/coverage.ts'
import { method } from '../../../src/methods/tabulated/index.ts'
import { coverage, prepared } from './bench.ts'

const RUNS = 1000
const COLUMNS = {
  time: { unit: 's', meaning: 'stopwatch' },
  pressure: { unit: 'Pa', meaning: 'pressure', hold: 'no' },
  point: { unit: 'text', words: ['left', 'right'], meaning: 'which one' },
}
const MEASURES = {
  average: 'mean(pressure)',
  rate: 'slope(pressure, time)',
  impulse: 'integral(pressure, time)',
  ratio: 'slope(pressure, time) * 60 s / mean(pressure)',
  left: 'at(pressure, point, left)',
  start: 'first(pressure)',
  drop: 'first(pressure) - last(pressure)',
  middle: 'at(pressure, time, 25 s)',
  high: 'max(pressure)',
}
const cardOf = (...names: (keyof typeof MEASURES)[]) =>
  prepared({ columns: COLUMNS, measures: Object.fromEntries(names.map((name) => [name, MEASURES[name]])) })
const scattering = cardOf('average', 'rate', 'ratio', 'left')
const area = cardOf('impulse')
const single = cardOf('start', 'drop', 'middle', 'high')
/** Far apart, so that no two simulations begin alike. */
const seedOf = (run: number): number => 7919 * (run + 1)

const simulated = (
  card: typeof single,
  gauge: Parameters<typeof certified>[1],
  truth: Readonly<Record<string, number>>,
) => {
  const instruments = { pressure: certified('gauge', gauge) }
  return Array.from({ length: RUNS }, (_, run) => {
    const columns = method.rehearse(card.givens, truth, instruments, seedOf(run))
    return card.measured(columns, instruments).measures
  })
}

const inside = (share: number) => {
  expect(share).toBeGreaterThanOrEqual(0.93)
  expect(share).toBeLessThanOrEqual(0.975)
}

/** Every second reading is one of the left: three of six would leave too few degrees of freedom, and bar a pass. */
describe.each([6, 12, 40])('%d readings with noise', (rows) => {
  const runs = simulated(
    scattering,
    { resolution: 0.5, gain: 0.002, offset: 0.5 },
    { pressure: 200, noise_pressure: 3, rows },
  )
  test.each([
    ['average', 200],
    ['rate', 0],
    ['ratio', 0],
    ['left', 200],
  ] as const)('%s', (name, truth) => {
    if (name === 'left' && rows < 8) return
    inside(
      coverage(
        runs.map((measures) => measures[name]),
        truth,
      ),
    )
  })
})

test.each([12, 40])('the area under %d readings with noise', (rows) => {
  const runs = simulated(area, { resolution: 0.5 }, { pressure: 200, noise_pressure: 3, rows, span: 60 })
  inside(
    coverage(
      runs.map(({ impulse }) => impulse),
      200 * 60,
    ),
  )
})

test('logged fast: 400 readings', () => {
  const card = cardOf('average', 'rate')
  const runs = simulated(
    card,
    { resolution: 0.5, offset: 0.2 },
    { pressure: 200, noise_pressure: 3, rows: 400 },
  )
  // Widened where blocks happen to be alike: on the safe side.
  for (const [name, value] of [
    ['average', 200],
    ['rate', 0],
  ] as const) {
    const share = coverage(
      runs.map((measures) => measures[name]),
      value,
    )
    expect(share, name).toBeGreaterThanOrEqual(0.93)
    expect(share, name).toBeLessThanOrEqual(0.985)
  }
})

describe('single readings: instrument and digit alone', () => {
  const runs = simulated(single, { gain: 0.002, offset: 0.5, resolution: 0.5 }, { pressure: 200.07, rows: 6 })
  test('the difference of two readings of one gauge: digits and gain', () => {
    // Both ends show the same digit here: what was read is exact, and the interval may only be too wide.
    expect(
      coverage(
        runs.map(({ drop }) => drop),
        0,
      ),
    ).toBe(1)
  })
  test.each(['start', 'middle', 'high'])('%s', (name) => {
    inside(
      coverage(
        runs.map((measures) => measures[name]),
        200.07,
      ),
    )
  })
})

describe('no false pass', () => {
  const slope = cardOf('rate')
  const average = cardOf('average')
  const limit = 0.5
  const verdicts = (rate: number, gauge: Parameters<typeof certified>[1], rows: number, noise: number) => {
    const instruments = { pressure: certified('gauge', gauge) }
    const truth = { pressure: 200, rate, rows, noise_pressure: noise }
    const runs = Array.from({ length: 500 }, (_, seed) =>
      method.rehearse(slope.givens, truth, instruments, seedOf(seed)),
    )
    return runs.filter((columns) => slope.passes(columns, instruments, 'rate', limit)).length / runs.length
  }
  test.each([
    ['a fine gauge, few readings', { resolution: 0.1 }, 6, 0.5],
    ['a fine gauge, many readings', { resolution: 0.1 }, 200, 3],
    ['a digit of a third of the change', { resolution: 10 }, 30, 0],
    ['a digit of the whole change', { resolution: 30 }, 200, 0.1],
    ['a digit of twice the change', { resolution: 60 }, 12, 0],
    ['noise of the size of the change', { resolution: 0.1 }, 12, 30],
    ['three readings', { resolution: 0.1 }, 3, 5],
  ] as const)('rate at 1.5 times its limit, %s', (_, gauge, rows, noise) => {
    expect(verdicts(1.5 * limit, gauge, rows, noise)).toBeLessThanOrEqual(0.05)
  })
  test('rate at half its limit passes', () => {
    expect(verdicts(0.5 * limit, { resolution: 0.1 }, 20, 1)).toBeGreaterThan(0.9)
  })

  const mean = (truth: number, gauge: Parameters<typeof certified>[1], rows: number, noise: number) => {
    const instruments = { pressure: certified('gauge', gauge) }
    const runs = Array.from({ length: 500 }, (_, seed) =>
      method.rehearse(
        average.givens,
        { pressure: truth, rows, noise_pressure: noise },
        instruments,
        seedOf(seed),
      ),
    )
    return runs.filter((columns) => average.passes(columns, instruments, 'average', 10)).length / runs.length
  }
  test.each([
    ['four noisy readings', { resolution: 0.1 }, 4, 10],
    ['a digit of four times the limit', { resolution: 40 }, 300, 0],
    ['a gauge good to half of it', { offset: 5 }, 10, 0.1],
  ] as const)('mean at 1.5 times its limit, %s', (_, gauge, rows, noise) => {
    expect(mean(15, gauge, rows, noise)).toBeLessThanOrEqual(0.05)
  })
  test('mean at half its limit passes', () => {
    expect(mean(5, { resolution: 0.1, offset: 0.2 }, 10, 1)).toBeGreaterThan(0.9)
  })
})
