/** What was put into simulated loops comes out again, within the uncertainty that is stated. Truth is the outside value. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { loopOf } from '../../../src/methods/circuit-stiffness/loop.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import { normal, random } from '../../../src/quantity/random.ts'
import { type Bench, bars, column, gauge, given, known, measured, rehearsed } from './bench.ts'

const cell = gauge('cell', { resolution: 0.1, gain: 0.003, offset: 0.3, linearity: 0.2 })
const dial = gauge('dial', { resolution: 1e-5, gain: 0.001, offset: 5e-6, linearity: 1e-5 })
const bench: Bench = {
  inputs: {
    limit_load: given(200, 'force'),
    arm: known('arm', 0.4, 0.001, 'length'),
    full_travel: known('full_travel', 0.1, 0.0005, 'length'),
  },
  instruments: { load: cell, deflection: dial },
}
const truth = { stiffness: 4000, free_play: 0.003, friction: 2, noise: 3e-5 }

test('a noise-free loop gives back stiffness, play and friction for any circuit (property)', () => {
  fc.assert(
    fc.property(
      fc.record({
        stiffness: fc.double({ min: 500, max: 50_000, noNaN: true }),
        play: fc.double({ min: 0, max: 0.01, noNaN: true }),
        // Up to 30 % of the greatest load; beyond, too little of the unloading is left.
        friction: fc.double({ min: 0, max: 0.3, noNaN: true }),
        steps: fc.integer({ min: 5, max: 15 }),
      }),
      ({ stiffness, play, friction, steps }) => {
        const ideal: Bench = { inputs: { limit_load: given(100, 'moment') }, instruments: {} }
        const columns = rehearsed(
          ideal,
          { stiffness, free_play: play, friction: friction * 110, steps, noise: 0, cycles: 1 },
          1,
        )
        const { measures } = measured(ideal, columns)
        expect(measures.stiffness?.value).toBeCloseTo(stiffness, 6)
        // Friction may leave too few points: then it is not known, and never wrong.
        if (measures.free_play) {
          expect(measures.free_play.value).toBeCloseTo(play, 9)
          expect(measures.friction?.value).toBeCloseTo(friction * 110, 6)
        }
      },
    ),
    { numRuns: 200 },
  )
})

test('the same in units of the trade: inches and pounds-force as read give the measures of SI', () => {
  const columns = rehearsed(bench, truth, 5)
  const inch = 0.0254
  const lbf = 4.4482216152605
  const there = (values: Float64Array | undefined, unit: number) =>
    Array.from(values ?? [], (value) => value / unit)
  const back = (values: readonly number[], unit: number) => values.map((value) => value * unit)
  const us = {
    load: column('force', back(there(columns.load?.values, lbf), lbf), 0.1),
    deflection: column('length', back(there(columns.deflection?.values, inch), inch), 1e-5),
  }
  const a = measured(bench, columns).measures
  const b = measured(bench, us).measures
  expect(Object.keys(b)).toEqual(Object.keys(a))
  for (const name of Object.keys(a)) expect(b[name]?.value).toBeCloseTo(a[name]?.value ?? Number.NaN, 9)
})

test('turning the sign of load and deflection together leaves every measure', () => {
  const columns = rehearsed(bench, truth, 6)
  const turned = {
    load: column(
      'force',
      Array.from(columns.load?.values ?? [], (v) => -v),
      0.1,
    ),
    deflection: column(
      'length',
      Array.from(columns.deflection?.values ?? [], (v) => -v),
      1e-5,
    ),
  }
  const a = measured(bench, columns).measures
  const b = measured(bench, turned).measures
  const swap: Readonly<Record<string, string>> = {
    stiffness_positive: 'stiffness_negative',
    stiffness_negative: 'stiffness_positive',
    reached_positive: 'reached_negative',
    reached_negative: 'reached_positive',
  }
  expect(Object.keys(a).length).toBeGreaterThan(12)
  for (const name of Object.keys(a))
    expect(b[swap[name] ?? name]?.value).toBeCloseTo(a[name]?.value ?? Number.NaN, 9)
})

test('the order of the rows counts: sorted by load, the loop has lost its friction', () => {
  const ideal: Bench = { inputs: { limit_load: given(100, 'moment') }, instruments: {} }
  const columns = rehearsed(ideal, { stiffness: 4000, friction: 6, noise: 0, cycles: 1 }, 1)
  const rows = Array.from(columns.load?.values.keys() ?? []).sort(
    (a, b) => (columns.load?.values[a] ?? 0) - (columns.load?.values[b] ?? 0),
  )
  const sorted = {
    load: column(
      'moment',
      rows.map((row) => columns.load?.values[row] ?? 0),
    ),
    deflection: column(
      'angle',
      rows.map((row) => columns.deflection?.values[row] ?? 0),
    ),
  }
  expect(measured(ideal, columns).measures.friction?.value).toBeCloseTo(6, 6)
  expect(measured(ideal, sorted).measures.friction).toBeUndefined()
})

describe('what is missing is not known, never 0', () => {
  const ideal: Bench = { inputs: { limit_load: given(100, 'moment') }, instruments: {} }
  const columns = rehearsed(ideal, { stiffness: 4000, friction: 6, free_play: 0.001, noise: 0, cycles: 1 }, 1)
  const only = (keep: (load: number, row: number) => boolean) => {
    const load = Array.from(columns.load?.values ?? [])
    const rows = load.map((_, row) => row).filter((row) => keep(load[row] ?? 0, row))
    return {
      load: column(
        'moment',
        rows.map((row) => load[row] ?? 0),
      ),
      deflection: column(
        'angle',
        rows.map((row) => columns.deflection?.values[row] ?? 0),
      ),
    }
  }

  test('no negative load', () => {
    const half = only((load) => load >= 0)
    const of = measured(ideal, half)
    expect(of.measures.stiffness?.value).toBeCloseTo(4000, 6)
    for (const name of [
      'free_play',
      'friction',
      'hysteresis',
      'deflection_at_limit',
      'travel_lost',
      'reached_negative',
    ])
      expect(of.measures[name]).toBeUndefined()
    expect(bars(ideal, half, of).join()).toContain('negative direction')
  })

  test('no unloading', () => {
    // The first quarter, and the third: loading only.
    const loading = only((_, row) => row <= 6 || (row > 12 && row <= 18))
    const { measures } = measured(ideal, loading)
    for (const name of ['free_play', 'friction', 'hysteresis']) expect(measures[name]).toBeUndefined()
    expect(measures.stiffness?.value).toBeCloseTo(4000, 6)
  })
})

test('identical repeated readings still carry an uncertainty: the resolution', () => {
  const columns = rehearsed(bench, { ...truth, noise: 0 }, 7)
  for (const name of ['stiffness', 'free_play', 'friction', 'deflection_at_limit', 'travel_lost']) {
    const quantity = measured({ ...bench, instruments: {} }, columns).measures[name]
    expect(quantity && (expanded(quantity)?.U ?? 0)).toBeGreaterThan(0)
  }
})

test('a pretensioned pair is called preload and shows the measured secant', () => {
  const loads = [0, 20, 40, 60, 80, 100, 110, 100, 80, 60, 40, 20, 0]
  const both = [...loads, ...loads.slice(1).map((load) => -load)]
  // Two cables of 10 kN·m/rad each to 40 N·m, one beyond: springs in parallel (derived).
  const spring = (m: number) =>
    Math.sign(m) * (Math.min(Math.abs(m), 40) / 20e3 + Math.max(0, Math.abs(m) - 40) / 10e3)
  const columns = { load: column('moment', both, 0.1), deflection: column('angle', both.map(spring), 1e-6) }
  const pair: Bench = {
    inputs: { limit_load: given(100, 'moment') },
    instruments: { load: gauge('cell'), deflection: gauge('level', { resolution: 1e-6 }) },
  }
  const of = measured(pair, columns)
  const said = bars(pair, columns, of).join(' ')
  expect(said).toContain('preload')
  expect(of.measures.secant_at_limit?.value).toBeCloseTo(100 / spring(100), 6)
  expect(of.measures.nonlinearity?.value).toBeGreaterThan(0.02)
})

test('a fast log with noise on both channels gives the circuit, not branches made of noise', () => {
  const generator = random(11)
  const rows = 20_000
  // Two slow cycles; the noise of the load passes three digits many times over.
  const loads = Array.from({ length: rows }, (_, i) => 110 * Math.sin((i / rows) * 4 * Math.PI))
  const moved = loopOf({ compliance: 1 / 4000, freePlay: 0.002, friction: 3 }, loads)
  const digit = (value: number, r: number) => Math.round(value / r) * r
  const columns = {
    load: column(
      'moment',
      loads.map((m) => digit(m + 0.1 * normal(generator), 0.01)),
      0.01,
    ),
    deflection: column(
      'angle',
      moved.map((x) => digit(x + 2e-5 * normal(generator), 1e-5)),
      1e-5,
    ),
  }
  const log: Bench = { inputs: { limit_load: given(100, 'moment') }, instruments: {} }
  const { measures } = measured(log, columns)
  for (const [name, value] of [
    ['stiffness', 4000],
    ['free_play', 0.002],
    ['friction', 3],
  ] as const) {
    const quantity = measures[name]
    const U = quantity && expanded(quantity)?.U
    expect(Math.abs((quantity?.value ?? 0) - value) / value).toBeLessThan(0.01)
    expect(Math.abs((quantity?.value ?? 0) - value)).toBeLessThanOrEqual(2 * (U ?? 0))
  }
})
