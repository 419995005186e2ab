/** Coverage, no false pass, what bars a pass, and what must not change the measures. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/mass-balance/index.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import {
  barsOf,
  coverageOf,
  measured,
  outOfBounds,
  passes,
  RUNS,
  rehearsed,
  reordered,
  type Setup,
  valuesOf,
  verdictOf,
  withValues,
} from '../bench.ts'
import { given, instrument, known } from '../parts.ts'

const setup: Setup = {
  method,
  inputs: {
    mass: known('mass', 2, 0.002, 'mass'),
    chord: known('chord', 0.25, 0.001, 'length'),
    balance_arm: known('balance_arm', -0.08, 0.0005, 'length'),
    tilt: known('tilt', 0.02, 0.01, 'angle'),
    cg_height: known('cg_height', 0.01, 0.002, 'length'),
  },
  instruments: {
    reading: instrument('scale', {
      resolution: 0.001,
      gain: 0.002,
      offset: 0.0005,
      linearity: 0,
      shape: 'normal',
    }),
    arm: instrument('rule', { resolution: 0.0005, offset: 0.0005, shape: 'normal' }),
  },
}
const truth = { unbalance: 0.06, arm: 0.4, noise: 0.002 }

test('the 95 % interval holds the truth with a test weight, hardly out of balance', () => {
  const light = { unbalance: 0.0005, arm: 0.4, noise: 0.002, test_weight: 0.5, repeats: 5 }
  const with_: Setup = {
    ...setup,
    instruments: { ...setup.instruments, tare: instrument('weights', { offset: 0.0002, shape: 'normal' }) },
  }
  const shares = coverageOf(with_, light, { unbalance: 0.0005, cg_arm: 0.00025 }, RUNS)
  expect(outOfBounds(shares, RUNS)).toEqual([])
})

describe('no false pass in 500 runs each', () => {
  const limit = 'unbalance < 0.06 kg·m'
  test('1.5 times the limit', () =>
    expect(passes(setup, { ...truth, unbalance: 0.09 }, limit, 500)).toBeLessThanOrEqual(0.05))
  test('1.5 times the limit with a scale of a digit of half of it', () => {
    const coarse: Setup = {
      ...setup,
      instruments: { ...setup.instruments, reading: instrument('coarse', { resolution: 0.1, offset: 0.05 }) },
    }
    expect(passes(coarse, { ...truth, unbalance: 0.09 }, limit, 500)).toBeLessThanOrEqual(0.05)
  })
  test('at the limit one in twenty', () =>
    expect(passes(setup, truth, limit, 500)).toBeLessThanOrEqual(0.065))
  test('half the limit passes', () =>
    expect(passes(setup, { ...truth, unbalance: 0.03 }, limit, 500)).toBeGreaterThanOrEqual(0.9))
})

describe('what bars a pass', () => {
  test('nothing on a good run', () => expect(barsOf(setup, rehearsed(setup, truth, 3))).toBe(''))
  test('a surface that hangs free of the scale, all but one time in twenty', () => {
    const free = Array.from({ length: 200 }, (_, seed) =>
      barsOf(setup, rehearsed(setup, { ...truth, unbalance: -0.0004 }, seed + 1)),
    )
    expect(free.filter((text) => text.includes('may hang free')).length).toBeGreaterThan(180)
  })
  test('not where a test weight presses it', () =>
    expect(barsOf(setup, rehearsed(setup, { ...truth, unbalance: -0.0004, test_weight: 0.5 }, 3))).toBe(''))
  test('a scale whose accuracy is not stated', () => {
    const blind: Setup = {
      ...setup,
      instruments: { ...setup.instruments, reading: instrument('blind', { gain: null, offset: null }) },
    }
    expect(barsOf(blind, rehearsed(setup, truth, 3))).toContain('not known')
    expect(verdictOf(blind, rehearsed(setup, truth, 3), 'unbalance < 1 kg·m')).toBe('undetermined')
  })
})

test('identical readings still carry their digits: r/√12 times the arm', () => {
  const ideal: Setup = { ...setup, inputs: { mass: given(2, 'mass') }, instruments: {} }
  const columns = rehearsed(ideal, { ...truth, noise: 0 }, 1)
  const { reading } = columns
  if (!reading) throw new Error('no reading')
  const { measures } = measured(ideal, { ...columns, reading: { ...reading, resolution: 0.001 } })
  expect(measures.unbalance && standardUncertainty(measures.unbalance)).toBeCloseTo(
    (0.4 * 0.001) / Math.sqrt(12),
    12,
  )
})

describe('what must not change the measures', () => {
  const columns = rehearsed(setup, { ...truth, repeats: 6 }, 5)
  const here = valuesOf(setup, columns)
  test('the order of the rows', () =>
    fc.assert(
      fc.property(fc.shuffledSubarray([...Array(6).keys()], { minLength: 6 }), (order) => {
        const there = valuesOf(setup, reordered(columns, order))
        for (const [name, value] of Object.entries(here)) expect(there[name], name).toBeCloseTo(value, 10)
      }),
      { numRuns: 20 },
    ))
  test('the sign of the arm turns the unbalance', () => {
    const level: Setup = { ...setup, inputs: { ...setup.inputs, tilt: given(0, 'angle') } }
    const there = valuesOf(
      level,
      withValues(columns, 'arm', (arm) => -arm),
    )
    expect(there.unbalance).toBeCloseTo(-(valuesOf(level, columns).unbalance ?? 0), 12)
  })
  test('limiting case: the balance weight that is asked for leaves nothing', () => {
    const { unbalance = 0, weight_to_add = 0 } = here
    expect(unbalance + weight_to_add * -0.08).toBeCloseTo(0, 12)
  })
})
