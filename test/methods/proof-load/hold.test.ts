import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { longestHold, stepsAsReadings, sustainedPeak } from '../../../src/methods/hold.ts'

// By hand: readings every second; the spike of 130 is no level that was held.
const time = [0, 1, 2, 3, 4, 5, 6, 7, 8]
const values = [0, 60, 101, 103, 130, 102, 100, 40, 0]

describe('sustained peak', () => {
  test('the level not undercut over 3 s, not the spike', () => {
    expect(sustainedPeak({ time, values, hold: 3 })).toEqual({ from: 2, to: 5, lowest: 2 })
    expect(sustainedPeak({ time, values, hold: 1 })).toEqual({ from: 3, to: 4, lowest: 3 })
    expect(sustainedPeak({ time, values, hold: 0 })).toEqual({ from: 4, to: 4, lowest: 4 })
  })

  test('a record shorter than the hold, or cut by gaps, has none', () => {
    expect(sustainedPeak({ time, values, hold: 9 })).toBeNull()
    expect(sustainedPeak({ time, values, hold: 2, maxGap: 0.5 })).toBeNull()
  })

  test('missing readings are passed over, never counted as a level', () => {
    const holes = values.map((value, row) => (row === 3 || row === 7 ? Number.NaN : value))
    expect(sustainedPeak({ time, values: holes, hold: 3 })).toEqual({ from: 2, to: 5, lowest: 2 })
  })

  test('equals the plain definition for any readings', () => {
    const reading = fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: -5, max: 5 }))
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 30 }), fc.integer({ min: 0, max: 6 }), (readings, hold) => {
        let clock = 0
        const t = readings.map(([step]) => (clock += step))
        const v = readings.map(([, value]) => value)
        let expected = Number.NEGATIVE_INFINITY
        for (let from = 0; from < v.length; from += 1)
          for (let to = from; to < v.length; to += 1)
            if ((t[to] ?? 0) - (t[from] ?? 0) >= hold)
              expected = Math.max(expected, Math.min(...v.slice(from, to + 1)))
        const found = sustainedPeak({ time: t, values: v, hold })
        expect(found ? v[found.lowest] : Number.NEGATIVE_INFINITY).toBe(expected)
      }),
    )
  })

  test('a million readings in one pass', () => {
    const n = 1_000_000
    const long = Float64Array.from({ length: n }, (_, row) => row / 1000)
    const wave = long.map((t) => Math.sin(t / 100) + ((t * 7919) % 1) / 100)
    const started = performance.now()
    const found = sustainedPeak({ time: long, values: wave, hold: 3 })
    expect(performance.now() - started).toBeLessThan(1500)
    expect(wave[found?.lowest ?? 0]).toBeGreaterThan(0.99)
  })
})

describe('longest hold', () => {
  test('first to last consecutive reading at or above the level', () => {
    expect(longestHold({ time, values }, () => 100)).toEqual({ from: 2, to: 6, lowest: 6 })
    expect(longestHold({ time, values }, () => 131)).toBeNull()
    expect(longestHold({ time, values, maxGap: 0.5 }, () => 100)).toEqual({ from: 2, to: 2, lowest: 2 })
  })
})

describe('steps that were held', () => {
  test('one step held 4 s is a hold of 4 s, and neighbours add up', () => {
    const steps = stepsAsReadings([2, 4, 3, 2], [50, 101, 104, 0])
    expect([...steps.time]).toEqual([0, 2, 2, 6, 6, 9, 9, 11])
    const held = longestHold(steps, () => 100)
    expect(held && (steps.time[held.to] ?? 0) - (steps.time[held.from] ?? 0)).toBe(7)
    expect(sustainedPeak({ ...steps, hold: 3 })).toMatchObject({ from: 4, to: 5 })
    expect(steps.values[sustainedPeak({ ...steps, hold: 6 })?.lowest ?? 0]).toBe(101)
  })
})
