/**
 * Softening: a station that is 30 % softer in the second loading is found, a sound one raises no alarm. Each simulated
 * test reads three stations, half a digit of noise and the digit on top, once at each of six steps.
 */
import { describe, expect, test } from 'vitest'
import { givensOf, measured, rehearsed, type Setup, type Truth } from '../bench.ts'
import { DIGIT, dial, gauge, setupOf } from './setups.ts'

const STATIONS = ['station_1', 'station_2', 'station_aft']
const three = setupOf(STATIONS)
const sound: Truth = { bulge: 20 * DIGIT }

/** Share of simulated tests in which some station is called softer, by name. */
const alarms = (setup: Setup, truth: Truth, tests: number): { any: number; right: number } => {
  let [any, right] = [0, 0]
  for (let seed = 1; seed <= tests; seed += 1) {
    const columns = rehearsed(setup, truth, seed)
    const givens = givensOf(setup)
    // What is said of stations rests on the readings alone, not on the uncertainty of the measures.
    const remarks = setup.method.conditions({}, columns, givens, setup.method.select(columns, givens), 0.95)
    const said = remarks.map(({ text }) => text).join('\n')
    if (said.includes('softer in the second')) any += 1
    if (said.includes('`station_2` is softer')) right += 1
  }
  return { any: any / tests, right: right / tests }
}

describe('30 % softer is found in 95 of 100 tests', () => {
  test.each<[string, Truth]>([
    ['20 digits of bulge, straight', { bulge: 20 * DIGIT }],
    ['20 digits, a membrane', { bulge: 20 * DIGIT, membrane: 0.5 }],
    ['60 digits, with seating of 20 in the first loading', { bulge: 60 * DIGIT, seating: 20 * DIGIT }],
    ['20 digits, read three times at each step', { bulge: 20 * DIGIT, repeats: 3 }],
    ['60 digits, only above 60 % of the target', { bulge: 60 * DIGIT, softens_from: 0.6 }],
  ])('%s', (_, truth) => {
    expect(alarms(three, { ...truth, softening: 1.3, soft_station: 2 }, 400).right).toBeGreaterThanOrEqual(
      0.95,
    )
  })
})

describe('no alarm on sound stations, at most 1 in 100', () => {
  const shaky: Setup = {
    ...three,
    instruments: { ...three.instruments, pressure: { ...gauge, resolution: 50 } },
  }
  test.each<[string, Setup, Truth]>([
    ['20 digits of bulge', three, sound],
    ['500 digits', three, { bulge: 500 * DIGIT }],
    ['seating', three, { ...sound, seating: 10 * DIGIT }],
    ['membrane stiffening', three, { bulge: 200 * DIGIT, membrane: 0.8 }],
    [
      'a membrane that seats and creeps',
      three,
      { bulge: 200 * DIGIT, membrane: 0.8, seating: 30 * DIGIT, creep: 5 * DIGIT, set: 5 * DIGIT },
    ],
    ['a gauge of 50 Pa a digit', shaky, { bulge: 200 * DIGIT, membrane: 0.5 }],
    ['dials that scatter by two digits', three, { bulge: 100 * DIGIT, noise: 2 * DIGIT }],
    ['five steps read three times', three, { ...sound, steps: 5, repeats: 3 }],
  ])('%s', (_, setup, truth) => {
    expect(alarms(setup, truth, 400).any).toBeLessThanOrEqual(0.01)
  })
})

describe('what cannot be told is not told', () => {
  test('one loading', () => {
    const { measures } = measured(three, rehearsed(three, { ...sound, loadings: 1 }, 1))
    expect(measures.softening).toBeUndefined()
  })
  test('a bulge below 20 digits', () => {
    const coarse = setupOf(['station_1'], {
      instruments: { pressure: gauge, station_1: { ...dial, resolution: 1e-4 } },
    })
    const columns = rehearsed(coarse, { bulge: 1.5e-3 }, 1)
    expect(measured(coarse, columns).measures.softening_1).toBeUndefined()
  })
  test('last step over first within one loading is no softening: a membrane stiffens', () => {
    const ideal: Setup = { ...three, instruments: {} }
    const columns = rehearsed(ideal, { bulge: 5e-3, membrane: 0.8, seating: 1e-3 }, 1)
    // By hand: the second loading runs on the curve of the first above the seating.
    expect(measured(ideal, columns).measures.softening_1?.value).toBeCloseTo(1, 2)
  })
})

test('without noise the ratio is the one put in (limiting case)', () => {
  const ideal: Setup = { ...three, instruments: {} }
  const of = (truth: Truth) => measured(ideal, rehearsed(ideal, truth, 1)).measures.softening_1?.value
  expect(of({ softening: 1.3, membrane: 0.4 })).toBeCloseTo(1.3, 9)
  expect(of({ softening: 1.3, softens_from: 0.63 })).toBeCloseTo(1.3, 6)
  expect(of({ softening: 0.9 })).toBeCloseTo(0.9, 9)
})
