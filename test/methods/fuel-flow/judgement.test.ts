/** Coverage, no false pass, what bars a pass, and what must not change the measures. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { method } from '../../../src/methods/fuel-flow/index.ts'
import type { Columns } from '../../../src/methods/method.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import {
  barsOf,
  coverageOf,
  measured,
  outOfBounds,
  passes,
  RUNS,
  rehearsed,
  type Setup,
  valuesOf,
  verdictOf,
  withValues,
} from '../bench.ts'
import { given, instrument, known } from '../parts.ts'

const LITRE_PER_HOUR = 1 / 3.6e6
const scale = instrument('scale', {
  resolution: 0.001,
  gain: 0.001,
  offset: 0.005,
  linearity: 0.001,
  shape: 'normal',
})
const setup: Setup = {
  method,
  inputs: {
    required: given(27 * LITRE_PER_HOUR, 'volume-flow'),
    density: known('density', 722, 1.5, 'density'),
    time_error: given(0.3, 'time'),
    hold: given(60, 'time'),
    attitude: known('attitude', 0.29, 0.005, 'angle'),
    least_attitude: given(0.26, 'angle'),
    least_head: given(0.4, 'length'),
    fuel_aboard: known('fuel_aboard', 0.004, 0.00005, 'volume'),
  },
  words: { feed: 'gravity' },
  instruments: {
    mass: scale,
    head: instrument('rule', { resolution: 0.0001, offset: 0.001, shape: 'normal' }),
  },
}
const asked = 40.5 * LITRE_PER_HOUR
const of = (ratio: number) => ({ flow: ratio * asked, noise: 0.003, first_head: 0.42, last_head: 0.38 })
const ENOUGH = 'flow_ratio >= 1'

test('the 95 % interval holds the truth with two readings, whose noise must be that of the digits', () => {
  const expected = {
    flow: 1.2 * asked,
    mass_flow: 1.2 * asked * 722,
    flow_ratio: 1.2,
    lowest_head: 0.38,
    head_margin: 0.02,
    attitude_margin: 0.03,
  }
  const shares = coverageOf(setup, { ...of(1.2), noise: 0.0003, readings: 2 }, expected, RUNS)
  expect(outOfBounds(shares, RUNS)).toEqual([])
})

describe('no false pass in 500 runs each', () => {
  test('two thirds of what is asked', () =>
    expect(passes(setup, of(1 / 1.5), ENOUGH, 500)).toBeLessThanOrEqual(0.05))
  test('just what is asked: one in twenty', () =>
    expect(passes(setup, of(1), ENOUGH, 500)).toBeLessThanOrEqual(0.065))
  test('two thirds, with a can of a digit of a third', () => {
    const coarse: Setup = {
      ...setup,
      instruments: { ...setup.instruments, mass: { ...scale, resolution: 0.15, offset: 0.05 } },
    }
    expect(passes(coarse, of(1 / 1.5), ENOUGH, 500)).toBeLessThanOrEqual(0.05)
  })
  test('falling off by half: the mean is enough and the end is not', () =>
    expect(passes(setup, { ...of(1.15), fall: 0.5 }, ENOUGH, 500)).toBeLessThanOrEqual(0.05))
  test('a half more than asked passes', () =>
    expect(passes(setup, of(1.5), ENOUGH, 500)).toBeGreaterThanOrEqual(0.9))
})

describe('what bars a pass', () => {
  const bars = (truth: Record<string, number>, with_ = setup) => barsOf(with_, rehearsed(with_, truth, 3))
  test('nothing on a good run', () => expect(bars(of(1.5))).toBe(''))
  test('too full a tank', () => expect(bars({ ...of(1.5), last_head: 0.41 })).toContain('not extrapolated'))
  test('a head that was not read', () => {
    const { first_head: _, last_head: __, ...rest } = of(1.5)
    expect(bars(rest)).toContain('no `head` was read')
  })
  test('too short', () => expect(bars({ ...of(1.5), lasts: 50 })).toContain('60 s are asked for'))
  test('an attitude that was reached by less than its uncertainty', () => {
    const flat: Setup = {
      ...setup,
      inputs: { ...setup.inputs, attitude: known('attitude', 0.262, 0.005, 'angle') },
    }
    expect(bars(of(1.5), flat)).toContain('was not reached')
    const blind: Setup = {
      ...setup,
      inputs: { ...setup.inputs, attitude: { ...given(0.4, 'angle'), parts: null, why: ['no ±'] } },
    }
    expect(bars(of(1.5), blind)).toContain('is not known to be reached: no ±')
    const { attitude: _, ...none } = setup.inputs
    expect(bars(of(1.5), { ...setup, inputs: none })).toContain('was not measured')
  })
  test('a flow that falls off; its second half may pass', () => {
    const falling = rehearsed(setup, { ...of(1.8), fall: 0.4 }, 3)
    expect(barsOf(setup, falling)).toContain('falls off')
    expect(verdictOf(setup, falling, ENOUGH)).toBe('undetermined')
    expect(
      verdictOf(setup, rehearsed(setup, { ...of(1.8), fall: 0.4, readings: 30 }, 3), 'late_ratio >= 1'),
    ).toBe('pass')
  })
  test('a logged flow that wavers', () => {
    const columns = rehearsed(setup, { ...of(1.5), readings: 200 }, 3)
    const wavering = withValues(columns, 'mass', (value, row) => value + 0.03 * Math.sin(row / 15))
    expect(barsOf(setup, wavering)).toContain('von Neumann')
  })
  test('a density that is not known', () => {
    const blind: Setup = {
      ...setup,
      inputs: { ...setup.inputs, density: { ...given(722, 'density'), parts: null, why: ['no ±'] } },
    }
    expect(verdictOf(blind, rehearsed(setup, of(1.5), 3), ENOUGH)).toBe('undetermined')
  })
})

describe('what must not change the measures', () => {
  const columns = rehearsed(setup, of(1.2), 5)
  const here = valuesOf(setup, columns)
  const same = (changed: Columns, names: readonly string[]) => {
    const there = valuesOf(setup, changed)
    for (const name of names)
      expect((there[name] ?? Number.NaN) / (here[name] ?? Number.NaN), name).toBeCloseTo(1, 9)
  }
  test('the hour of the clock', () =>
    fc.assert(
      fc.property(fc.double({ min: -1e5, max: 1e5, noNaN: true }), (by) =>
        same(
          withValues(columns, 'time', (t) => t + by),
          ['flow', 'flow_ratio', 'late_flow', 'mass_flow'],
        ),
      ),
      { numRuns: 20 },
    ))
  test('what was in the can before', () =>
    same(
      withValues(columns, 'mass', (m) => m + 3),
      ['flow', 'late_flow', 'flow_ratio'],
    ))
  test('mass and volume of one density', () => {
    const mass = columns.mass
    if (!mass) throw new Error('no mass')
    const { mass: _, ...rest } = columns
    const volume = {
      ...mass,
      values: mass.values.map((m) => m / 722),
      dim: [3, 0, 0, 0, 0, 0] as const,
      resolution: 1e-6,
    }
    const there = valuesOf(setup, { ...rest, volume })
    for (const name of ['flow', 'flow_ratio', 'mass_flow', 'required_flow'])
      expect((there[name] ?? 0) / (here[name] ?? 1), name).toBeCloseTo(1, 9)
  })
  test('a consumption as a mass per time: the density cancels where mass was read', () => {
    const { density: _, ...inputs } = setup.inputs
    const with_: Setup = {
      ...setup,
      inputs: { ...inputs, required: given(27 * LITRE_PER_HOUR * 722, 'mass-flow') },
    }
    const there = measured(with_, columns).measures
    expect(there.flow_ratio?.value).toBeCloseTo(here.flow_ratio ?? 0, 9)
    expect(there.flow).toBeUndefined()
  })
})

test('readings exactly on a line still carry their digits', () => {
  const ideal: Setup = {
    ...setup,
    inputs: { ...setup.inputs, time_error: given(0, 'time') },
    instruments: { mass: instrument('ideal') },
  }
  const columns = rehearsed(ideal, { ...of(1.2), noise: 0 }, 1)
  const { mass } = columns
  if (!mass) throw new Error('no mass')
  const { measures } = measured(ideal, { ...columns, mass: { ...mass, resolution: 0.005 } })
  for (const name of ['mass_flow', 'flow_change', 'late_ratio']) {
    const measure = measures[name]
    expect(measure && (expanded(measure)?.U ?? 0), name).toBeGreaterThan(0)
  }
})

test('the factor is that of the feed, and may be another', () => {
  const columns = rehearsed(setup, of(1.2), 5)
  const ratio = (words: Record<string, string>, more = {}) =>
    (valuesOf({ ...setup, words, inputs: { ...setup.inputs, ...more } }, columns).required_flow ?? 0) /
    (27 * LITRE_PER_HOUR)
  expect(ratio({ feed: 'gravity' })).toBeCloseTo(1.5, 12)
  expect(ratio({ feed: 'pump' })).toBeCloseTo(1.25, 12)
  expect(ratio({ feed: 'pump' }, { factor: given(2, 'number') })).toBeCloseTo(2, 12)
})
