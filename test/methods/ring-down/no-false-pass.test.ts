/** Nothing passes that should not: too little damping, a second mode, friction. The criterion is damping_ratio > 2 %. */
import { describe, expect, test } from 'vitest'
import { passesAbove, record, run, type Truth } from './bench.ts'

const LIMIT = 0.02
const base = { frequency: 10, noise: 0.003, rate: 150 }

const passes = (truth: Truth, count: number): number => {
  let passed = 0
  for (let seed = 1; seed <= count; seed += 1) {
    const columns = record({ ...base, ...truth }, seed)
    if (passesAbove(columns, LIMIT)) passed += 1
  }
  return passed / count
}

describe('500 runs', { timeout: 60_000 }, () => {
  test('damping that is missing the limit by a factor of 1.5: at most 5 % pass', () => {
    expect(passes({ damping_ratio: LIMIT / 1.5 }, 500)).toBeLessThanOrEqual(0.05)
  })
  test('the same under noise of 2.5 % and five turns', () => {
    const truth = { damping_ratio: LIMIT / 1.5, noise: 0.025, duration: 0.5, rate: 120 }
    expect(passes(truth, 500)).toBeLessThanOrEqual(0.05)
  })
  test('twice the limit: at least 90 % pass', () => {
    expect(passes({ damping_ratio: 2 * LIMIT }, 500)).toBeGreaterThanOrEqual(0.9)
  })
})

describe('never one clean mode, though the damping looks large', () => {
  test.each([0.002, 0.005, 0.02, 0.1])('friction that shifts the swing by %f of it', (friction) => {
    expect(passes({ damping_ratio: 0.022, friction }, 30)).toBe(0)
  })
  test('friction alone', () => {
    expect(passes({ damping_ratio: 1e-9, friction: 0.03, duration: 3 }, 30)).toBe(0)
  })
  test.each([
    [10.2, 0.1],
    [10.2, 1],
    [10.5, 0.05],
    [10.5, 0.5],
    [11, 0.3],
    [12, 0.1],
    [12, 1],
  ])('a second mode at %f Hz of %f of the amplitude', (second_frequency, second_amplitude) => {
    const truth = { damping_ratio: 0.03, second_frequency, second_amplitude, second_phase: 0.5 }
    expect(passes(truth, 30)).toBe(0)
  })
  test('a second mode of other damping', () => {
    const truth = { damping_ratio: 0.03, second_frequency: 10.3, second_amplitude: 0.3, second_damping: 0.08 }
    expect(passes(truth, 30)).toBe(0)
  })
  test('noise of 5 %', () => {
    expect(passes({ damping_ratio: 0.04, noise: 0.05 }, 30)).toBe(0)
  })
})

describe('the remark says why', () => {
  const bars = (truth: Truth) => run(record({ ...base, damping_ratio: 0.04, ...truth }, 1)).bars.join(' ')
  test('nothing where it is clean', () => expect(bars({})).toBe(''))
  test('friction: early and late', () =>
    expect(bars({ friction: 0.003, noise: 0.001 })).toMatch(/early and .* late.*friction/))
  test('second mode', () =>
    expect(bars({ second_frequency: 11, second_amplitude: 0.3 })).toMatch(/second mode/))
  test('too few turns', () => expect(bars({ duration: 0.35 })).toMatch(/fewer than 4 do not show a mode/))
  test('too few readings a turn', () => expect(bars({ rate: 33, duration: 3 })).toMatch(/readings a turn/))
})
