/** Coverage, no false pass, what bars a pass, and what must not change the measures. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { angleOf } from '../../../src/methods/travel/cells.ts'
import { method } from '../../../src/methods/travel/index.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import {
  barsOf,
  coverageOf,
  field,
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
import { given, instrument } from '../parts.ts'

const DEG = Math.PI / 180
const positions = field(method, 'positions', {
  up: { nominal: '25 deg', tolerance: '2 deg' },
  down: { nominal: '-20 deg', plus: '1 deg', minus: '3 deg' },
})
const level = instrument('level', {
  resolution: 0.1 * DEG,
  gain: 0.002,
  offset: 0.1 * DEG,
  linearity: 0.03 * DEG,
  shape: 'normal',
})
const setup: Setup = {
  method,
  inputs: {},
  words: { counted_from: 'zero', offset_as: 'chord' },
  fields: { positions },
  instruments: {
    angle: level,
    force: instrument('puller', { resolution: 0.5, gain: 0.01, offset: 0.3, linearity: 0, shape: 'normal' }),
  },
}
const truth = {
  sides: 2,
  noise: 0.15 * DEG,
  up_left: 25.9 * DEG,
  up_right: 24.7 * DEG,
  down_left: -19.8 * DEG,
  down_right: -18.7 * DEG,
  neutral_left: 0.6 * DEG,
  neutral_right: -0.1 * DEG,
  friction: 9,
  centring: 2,
  force_noise: 0.6,
}
const sides = {
  up_left: 25.9 * DEG,
  up_left_error: 0.9 * DEG,
  up_left_margin: 1.1 * DEG,
  down_right: -18.7 * DEG,
  down_right_error: -1.3 * DEG,
  down_right_margin: 1.7 * DEG,
  down_left_error: -0.2 * DEG,
  down_left_margin: 1.2 * DEG,
  up_asymmetry: 1.2 * DEG,
  down_asymmetry: 1.1 * DEG,
}

describe('the 95 % interval holds the truth, beside the set-ups of the kept coverage', () => {
  test('two repeats, by level', () => {
    const expected = { ...sides, neutral_offset: 0.6 * DEG }
    expect(outOfBounds(coverageOf(setup, { ...truth, repeats: 2 }, expected, RUNS), RUNS)).toEqual([])
  })
  test('counted from neutral', () => {
    const from: Setup = { ...setup, words: { counted_from: 'neutral' } }
    const expected = { up_left: 25.3 * DEG, down_right: -18.6 * DEG, up_asymmetry: (25.3 - 24.8) * DEG }
    expect(outOfBounds(coverageOf(from, { ...truth, repeats: 4 }, expected, RUNS), RUNS)).toEqual([])
  })
})

describe('no false pass in 500 runs each', () => {
  const limit = 'worst_margin > 0 deg'
  const off = (degrees: number) => ({ noise: 0.1 * DEG, up: (25 + degrees) * DEG, repeats: 4 })
  test('1.5 times the tolerance', () => expect(passes(setup, off(3), limit, 500)).toBeLessThanOrEqual(0.05))
  test('1.5 times the tolerance, short', () =>
    expect(passes(setup, off(-3), limit, 500)).toBeLessThanOrEqual(0.05))
  test('1.5 times the tolerance, with a level of 2° a digit', () => {
    const coarse: Setup = { ...setup, instruments: { angle: { ...level, resolution: 2 * DEG, offset: DEG } } }
    expect(passes(coarse, off(3), limit, 500)).toBeLessThanOrEqual(0.05)
  })
  test('at the tolerance one in twenty', () =>
    expect(passes(setup, off(2), limit, 500)).toBeLessThanOrEqual(0.065))
  test('half the tolerance passes', () =>
    expect(passes(setup, off(1), limit, 500)).toBeGreaterThanOrEqual(0.9))
  test('of friction', () => {
    const rubbing = (friction: number) => ({ friction, force_noise: 0.5, repeats: 6 })
    expect(passes(setup, rubbing(15), 'friction_force < 10 N', 500)).toBeLessThanOrEqual(0.05)
    expect(passes(setup, rubbing(5), 'friction_force < 10 N', 500)).toBeGreaterThanOrEqual(0.9)
  })
})

describe('what bars a pass', () => {
  const columns = rehearsed(setup, truth, 3)
  test('nothing on a good run', () => expect(barsOf(setup, columns)).toBe(''))
  test('a position, or a side of it, that was not read', () => {
    const without = (name: string, side: string) =>
      withValues(columns, 'angle', (value, row) =>
        columns.position?.texts?.[row] === name && (side === '' || columns.side?.texts?.[row] === side)
          ? Number.NaN
          : value,
      )
    expect(barsOf(setup, without('down', ''))).toContain('down, left side, was not read')
    expect(barsOf(setup, without('up', 'right'))).toBe('up, right side, was not read, and the card names it')
  })
  test('stops that are not fitted', () =>
    expect(barsOf({ ...setup, words: { stops: 'not-fitted' } }, columns)).toContain('stops are not fitted'))
  test('a level whose accuracy is not stated, a radius without ±', () => {
    const blind: Setup = {
      ...setup,
      instruments: { angle: instrument('blind', { gain: null, offset: null }) },
    }
    expect(verdictOf(blind, columns, 'abs(up_left_error) < 20 deg')).toBe('undetermined')
    const by: Setup = {
      ...setup,
      inputs: { radius: { ...given(0.4, 'length'), parts: null, why: ['no ±'] } },
      instruments: { offset: instrument('rule') },
    }
    expect(verdictOf(by, rehearsed(by, truth, 3), 'abs(up_left_error) < 20 deg')).toBe('undetermined')
  })
})

test('equal readings carry their digits, each position its own: two sides compared with one level too', () => {
  const bare: Setup = { ...setup, instruments: { angle: instrument('level') } }
  const columns = rehearsed(bare, { sides: 2, noise: 0 }, 1)
  const { angle } = columns
  if (!angle) throw new Error('no angle')
  const { measures } = measured(bare, { ...columns, angle: { ...angle, resolution: 0.1 * DEG } })
  const digit = (0.1 * DEG) / Math.sqrt(12)
  expect(measures.up_left && standardUncertainty(measures.up_left)).toBeCloseTo(digit, 9)
  expect(measures.asymmetry && standardUncertainty(measures.asymmetry)).toBeCloseTo(Math.SQRT2 * digit, 9)
})

describe('what must not change the measures', () => {
  const columns = rehearsed(setup, truth, 5)
  const here = valuesOf(setup, columns)
  const count = columns.angle?.values.length ?? 0
  test('the order of the rows', () =>
    fc.assert(
      fc.property(fc.shuffledSubarray([...Array(count).keys()], { minLength: count }), (order) => {
        const there = valuesOf(setup, reordered(columns, order))
        for (const [name, value] of Object.entries(here)) expect(there[name], name).toBeCloseTo(value, 10)
      }),
      { numRuns: 20 },
    ))
  test('all signs turned, on the card and in the readings: errors, margins and friction stay', () => {
    const turned = field(method, 'positions', {
      up: { nominal: '-25 deg', tolerance: '2 deg' },
      down: { nominal: '20 deg', plus: '1 deg', minus: '3 deg' },
    })
    const mirrored = withValues(
      withValues(columns, 'angle', (value) => -value),
      'force',
      (value) => -value,
    )
    const there = valuesOf({ ...setup, fields: { positions: turned } }, mirrored)
    for (const [name, value] of Object.entries(here)) {
      const stays = /error|margin|asymmetry|friction/.test(name) && !name.startsWith('neutral')
      if (stays) expect(there[name], name).toBeCloseTo(value, 10)
    }
    expect(there.up_left).toBeCloseTo(-(here.up_left ?? 0), 10)
  })
  test('counted from neutral, a zero of the level that is off by anything', () =>
    fc.assert(
      fc.property(fc.double({ min: -0.2, max: 0.2, noNaN: true }), (by) => {
        const from: Setup = { ...setup, words: { counted_from: 'neutral' } }
        const there = valuesOf(
          from,
          withValues(columns, 'angle', (value) => value + by),
        )
        const before = valuesOf(from, columns)
        for (const name of ['up_left', 'down_right_error', 'asymmetry'])
          expect(there[name]).toBeCloseTo(before[name] ?? 0, 9)
      }),
      { numRuns: 20 },
    ))
})

test('offsets (limiting cases by hand): small ones agree, a chord of one radius is 60°, square of one radius 90°', () => {
  const of = (offset: number, as: string) =>
    angleOf(offset, { numbers: { radius: 2 }, words: { offset_as: as }, fields: {} })
  expect(of(1e-4, 'chord')).toBeCloseTo(5e-5, 12)
  expect(of(1e-4, 'square')).toBeCloseTo(5e-5, 12)
  expect(of(2, 'chord')).toBeCloseTo(Math.PI / 3, 12)
  expect(of(-2, 'square')).toBeCloseTo(-Math.PI / 2, 12)
  expect(of(4.1, 'chord')).toBeNaN()
})
