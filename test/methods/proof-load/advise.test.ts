/** What is said of a set, of where it slipped, and of the next load. */
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../../src/methods/method.ts'
import { method } from '../../../src/methods/proof-load/index.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { column, instrument } from '../parts.ts'
import { advised } from '../plan-bench.ts'
import { givensOf, measured, type Setup } from './bench.ts'

const DIGIT = 1e-5
const scale = instrument('scale', { resolution: 1, offset: 0.5 })
const setup: Setup = {
  target: 1000,
  hold: 10,
  words: { play: 'none' },
  instruments: {
    load: scale,
    ...Object.fromEntries(
      ['station_horn', 'station_crank', 'station_stick'].map((name) => [
        name,
        instrument(name, { resolution: DIGIT }),
      ]),
    ),
  },
}

/** Horn, bellcrank and stick give 1, 2 and 3 mm/kN; what stays is set by station. */
const course = (sets: readonly [number, number, number], peak = 1020): Columns => {
  const loads = [0, 0, 0, 500, peak, peak, peak, peak, 500, 0, 0, 0]
  const dial = (k: number) =>
    loads.map((load, row) => ((k + 1) * load) / 1e6 + (row > 7 ? (sets[k] ?? 0) : 0))
  const phases = loads.map((load, row) => (load > 0 ? '' : row < 3 ? 'before' : 'after'))
  return {
    time: column(
      'time',
      loads.map((_, row) => 5 * row),
    ),
    load: column('force', loads, 1),
    station_horn: column('length', dial(0), DIGIT),
    station_crank: column('length', dial(1), DIGIT),
    station_stick: column('length', dial(2), DIGIT),
    phase: {
      values: new Float64Array(loads.length).fill(Number.NaN),
      texts: phases,
      dim: KINDS.text.dim,
      resolution: 0,
    },
  }
}
const advice = (columns: Columns, name: string, limit: readonly ['below' | 'above', number]): string => {
  const found = measured(setup, columns)
  return advised(method, found.measures, name, limit, givensOf(setup), found.columns)
}

describe('a set', () => {
  test('is put between the two stations where it arises, by hand: 0.4 mm from bellcrank to stick', () => {
    const text = advice(course([0.0001, 0.0001, 0.0005]), 'permanent_set', ['below', 2e-4])
    expect(text).toMatch(/0.5 mm stayed, 1[67] % of the movement/)
    expect(text).toMatch(/0.4 mm of it lies between `crank` and `stick`/)
    expect(text).toMatch(/same target again, no higher/)
  })
  test('that is alike everywhere lies in no segment', () => {
    expect(advice(course([5e-4, 5e-4, 5e-4]), 'permanent_set', ['below', 2e-4])).not.toMatch(/lies between/)
  })
  test('that is none is not looked for', () => {
    expect(advice(course([0, 0, 0]), 'permanent_set', ['below', 1e-9])).toBe('')
  })
})

test('the next load is what makes the target sure with this scale; above it nothing is said', () => {
  expect(advice(course([0, 0, 0], 1000), 'peak_ratio', ['above', 1])).toMatch(/Next load: 100\d N or more/)
  expect(advice(course([0, 0, 0], 1020), 'peak_ratio', ['above', 1])).toBe('')
})
