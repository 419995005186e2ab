/** Coverage, no false pass, what bars a pass, and what must not change the measures. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../../src/methods/method.ts'
import { envelopeOf } from '../../../src/methods/weighing/envelope.ts'
import { gravity } from '../../../src/methods/weighing/gravity.ts'
import { method } from '../../../src/methods/weighing/index.ts'
import { expanded, standardUncertainty } from '../../../src/quantity/quantity.ts'
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
import { given, instrument, known } from '../parts.ts'

const scale = (id: string, more = {}) =>
  instrument(id, { resolution: 0.1, gain: 0.0005, offset: 0.15, linearity: 0, shape: 'normal', ...more })

const setup: Setup = {
  method,
  inputs: {
    pitch: known('pitch', 0.004, 0.002, 'angle'),
    cg_height: known('cg_height', 0.8, 0.05, 'length'),
    arm_left: known('arm_left', 1.8, 0.002, 'length'),
    arm_right: known('arm_right', 1.8, 0.002, 'length'),
    arm_nose: known('arm_nose', 0.4, 0.002, 'length'),
    arm_fuel: known('arm_fuel', 1.7, 0.01, 'length'),
    volume_fuel: known('volume_fuel', 0.08, 0.0004, 'volume'),
    density_fuel: known('density_fuel', 720, 2, 'density'),
    mac: known('mac', 1.2, 0.002, 'length'),
    mac_leading_edge: known('mac_leading_edge', 1.3, 0.002, 'length'),
    side_left: known('side_left', -1, 0.002, 'length'),
    side_right: known('side_right', 1, 0.002, 'length'),
    side_nose: known('side_nose', 0, 0.002, 'length'),
    side_fuel: known('side_fuel', 0, 0.002, 'length'),
    roll: known('roll', 0, 0.002, 'angle'),
    latitude: given(0.82, 'angle'),
    scale_latitude: given(0.66, 'angle'),
  },
  fields: {
    points: ['left', 'right', 'nose'],
    items: ['fuel'],
    envelope: field(method, 'envelope', [
      ['300 kg', '1.30 m'],
      ['600 kg', '1.45 m'],
      ['600 kg', '1.65 m'],
      ['300 kg', '1.65 m'],
    ]),
  },
  instruments: { reading_a: scale('a'), reading_b: scale('b'), reading_c: scale('c') },
}
/** Forward limit at 450 kg: 1.375 m. */
const truth = { weight: 450, cg: 1.5, remove_fuel: 1, noise: 0.3 }
const expected = {
  weight: 450,
  cg: 1.5,
  moment: 675,
  cg_mac: 1 / 6,
  cg_forward_margin: 0.125,
  cg_aft_margin: 0.15,
  weight_margin: 150,
  cg_lateral: 0,
}

test('the 95 % interval holds the truth with all points on one scale, five repeats', () => {
  const one = { ...setup, instruments: { reading: scale('one') } }
  expect(outOfBounds(coverageOf(one, { ...truth, repeats: 5 }, expected, RUNS), RUNS)).toEqual([])
})

describe('no false pass in 500 runs each', () => {
  const inside = 'cg_forward_margin > 0 m and cg_aft_margin > 0 m and weight_margin > 0 kg'
  // Behind the aft limit by half of what was there between limits; at half way to it.
  test('behind the aft limit', () =>
    expect(passes(setup, { ...truth, cg: 1.6875 }, inside, 500)).toBeLessThanOrEqual(0.05))
  test('on the aft limit one in twenty', () =>
    expect(passes(setup, { ...truth, cg: 1.65 }, inside, 500)).toBeLessThanOrEqual(0.065))
  test('1.5 times the highest mass', () =>
    expect(passes(setup, { ...truth, weight: 675 }, 'weight < 450 kg', 500)).toBeLessThanOrEqual(0.05))
  test('well inside passes', () => expect(passes(setup, truth, inside, 500)).toBeGreaterThanOrEqual(0.9))
})

test('identical readings still carry an uncertainty: their digits, also of equal loads on one scale', () => {
  const even: Setup = {
    ...setup,
    inputs: {
      ...setup.inputs,
      arm_left: given(1, 'length'),
      arm_right: given(1, 'length'),
      arm_nose: given(1, 'length'),
    },
    instruments: { reading: instrument('ideal') },
  }
  const columns = rehearsed(even, { weight: 300, noise: 0 }, 1)
  const reading = columns.reading
  if (!reading) throw new Error('no reading')
  const { measures } = measured(
    { ...even, inputs: { ...even.inputs, arm_left: given(0.5, 'length'), arm_nose: given(1.5, 'length') } },
    { ...columns, reading: { ...reading, resolution: 0.5 } },
  )
  // Three loads alike, each rounded to 0.5 kg: √3 · 0.5/√12.
  expect(standardUncertainty(measures.weight_as_weighed ?? expect.fail('no weight'))).toBeCloseTo(0.25, 3)
  for (const name of ['weight', 'cg', 'cg_mac']) {
    const measure = measures[name]
    expect(measure && (expanded(measure)?.U ?? 0), name).toBeGreaterThan(0)
  }
})

describe('what must not change the measures', () => {
  const columns = rehearsed(setup, truth, 7)
  const here = valuesOf(setup, columns)
  const same = (there: Record<string, number>, names = Object.keys(here)) => {
    for (const name of names) expect(there[name], name).toBeCloseTo(here[name] ?? Number.NaN, 8)
  }
  test('the order of the rows', () =>
    fc.assert(
      fc.property(fc.shuffledSubarray([...Array(10).keys()], { minLength: 10 }), (order) =>
        same(valuesOf(setup, reordered(columns, order))),
      ),
      { numRuns: 20 },
    ))
  test('another datum moves arms, not margins to limits that move along', () =>
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (by) => {
        const inputs = Object.fromEntries(
          Object.entries(setup.inputs).map(([name, quantity]) => [
            name,
            name.startsWith('arm_') || name === 'mac_leading_edge'
              ? { ...quantity, value: quantity.value + by }
              : quantity,
          ]),
        )
        const envelope = (envelopeOf({ fields: setup.fields ?? {} }) ?? []).map(({ mass, arm }) => ({
          mass,
          arm: arm + by,
        }))
        const there = valuesOf({ ...setup, inputs, fields: { ...setup.fields, envelope } }, columns)
        same(there, ['weight', 'cg_mac', 'cg_forward_margin', 'cg_aft_margin', 'weight_margin', 'cg_lateral'])
        expect(there.cg).toBeCloseTo((here.cg ?? 0) + by, 8)
      }),
      { numRuns: 20 },
    ))
  test('a tare that is on every scale, added to the readings', () => {
    const heavier = ['reading_a', 'reading_b', 'reading_c'].reduce(
      (all, name) => withValues(all, name, (value) => value + 5),
      columns,
    )
    const tare = {
      values: new Float64Array(10).fill(5),
      dim: columns.reading_a?.dim ?? [0, 1, 0, 0, 0, 0],
      resolution: 0,
    }
    same(valuesOf(setup, { ...heavier, tare }))
  })
  test('gravity: all of one factor leaves the centre of gravity as weighed where it was', () => {
    const { latitude: _, scale_latitude: __, ...inputs } = setup.inputs
    const plain = valuesOf({ ...setup, inputs }, columns)
    const factor = gravity(0.66, 0) / gravity(0.82, 0)
    expect(here.weight_as_weighed).toBeCloseTo((plain.weight_as_weighed ?? 0) * factor, 9)
    expect(here.cg_as_weighed).toBeCloseTo(plain.cg_as_weighed ?? 0, 9)
  })
})

test('normal gravity (WGS 84 formula; values of a second source) and its fall with height (from memory)', () => {
  const at = (degrees: number) => gravity((degrees * Math.PI) / 180, 0)
  expect(at(0)).toBeCloseTo(9.7803253, 7)
  expect(at(30)).toBeCloseTo(9.7932473, 7)
  expect(at(45)).toBeCloseTo(9.8061978, 7)
  expect(at(60)).toBeCloseTo(9.819177, 7)
  expect(at(90)).toBeCloseTo(9.8321849, 7)
  expect(gravity(0, 500) - gravity(0, 0)).toBeCloseTo(-0.001543, 9)
})

const columnsText = (columns: Columns, row: number) => columns.point?.texts?.[row]

describe('what bars a pass', () => {
  test('nothing on a good run', () => expect(barsOf(setup, rehearsed(setup, truth, 3))).toBe(''))
  test('a point that hardly presses its scale', () => {
    const columns = ['reading_a', 'reading_b', 'reading_c'].reduce(
      (all, name) =>
        withValues(all, name, (value, row) =>
          columnsText(all, row) === 'nose' && !Number.isNaN(value) ? 0.1 : value,
        ),
      rehearsed(setup, truth, 3),
    )
    expect(barsOf(setup, columns)).toContain('which is not above zero')
  })
  test('a scale that is off by 2 kg', () => {
    const columns = withValues(rehearsed(setup, truth, 3), 'reading_b', (value) => value + 2)
    expect(barsOf(setup, columns)).toContain('one of them is wrong')
  })
  test('a weight above all limits', () =>
    expect(barsOf(setup, rehearsed(setup, { ...truth, weight: 700 }, 3))).toContain('no limits'))
  test('a scale whose accuracy is not stated', () => {
    const blind: Setup = {
      ...setup,
      instruments: { ...setup.instruments, reading_a: scale('a', { gain: null, offset: null }) },
    }
    const columns = rehearsed(setup, truth, 3)
    expect(barsOf(blind, columns)).toContain('is not known')
    expect(verdictOf(blind, columns, 'weight < 900 kg')).toBe('undetermined')
  })
})
