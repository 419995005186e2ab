/** Stations, fixture and the loaded end: springs in series add up, and what the fixture gives is not the circuit's. */
import { describe, expect, test } from 'vitest'
import method from '../../../src/methods/circuit-stiffness/index.ts'
import { expanded } from '../../../src/quantity/quantity.ts'
import { type Bench, bars, column, gauge, given, givensFor, known, measured, rehearsed } from './bench.ts'

const level = gauge('level', { resolution: 1e-5, gain: 0.001, offset: 1e-5, linearity: 1e-5 })
const torque = gauge('torque', { resolution: 0.01, gain: 0.002, offset: 0.05, linearity: 0.05 })
const stations: Bench = {
  inputs: {
    limit_load: given(60, 'moment'),
    ratio_horn: known('ratio_horn', 1, 0.002, 'number'),
    ratio_bellcrank: known('ratio_bellcrank', 0.8, 0.002, 'number'),
    ratio_stick: known('ratio_stick', 0.6, 0.002, 'number'),
  },
  fields: { stations: ['horn', 'bellcrank', 'stick'] },
  instruments: {
    load: torque,
    deflection: level,
    at_horn: level,
    at_bellcrank: level,
    at_stick: level,
    at_fixture: level,
  },
}
const SEGMENTS = ['load_horn', 'horn_bellcrank', 'bellcrank_stick', 'stick_fixture']
const truth = {
  stiffness: 2000,
  friction: 1,
  free_play: 0.002,
  compliance_load_horn: 0.1,
  compliance_horn_bellcrank: 0.5,
  compliance_bellcrank_stick: 0.3,
  compliance_stick_fixture: 0.1,
  fixture_compliance: 5e-5,
}

describe('segments in series (derived: compliances of springs in series add up)', () => {
  const columns = rehearsed(stations, truth, 4)
  const { measures } = measured(stations, columns)
  const of = (name: string) =>
    measures[name] ?? { value: Number.NaN, dim: [0, 0, 0, 0, 0, 0], parts: null, why: [] }

  test('they add up to the whole within U, and the shares to 1', () => {
    const sum = SEGMENTS.reduce((total, name) => total + of(`compliance_${name}`).value, 0)
    expect(Math.abs(sum - of('compliance').value)).toBeLessThanOrEqual(expanded(of('compliance'))?.U ?? 0)
    expect(SEGMENTS.reduce((total, name) => total + of(`share_${name}`).value, 0)).toBeCloseTo(1, 12)
  })

  test.each([
    ['load_horn', 0.1],
    ['horn_bellcrank', 0.5],
    ['bellcrank_stick', 0.3],
    ['stick_fixture', 0.1],
  ])('share of %s is %d within U', (name, share) => {
    const quantity = of(`share_${name}`)
    expect(Math.abs(quantity.value - share)).toBeLessThanOrEqual(expanded(quantity)?.U ?? 0)
  })

  test('advice: the softest segment and what it alone would need', () => {
    const whole = of('surface_stiffness')
    const judged = (limit: number) => [
      {
        criterion: 'stiff',
        verdict: 'fail' as const,
        measures: ['surface_stiffness'],
        value: whole.value,
        limits: [limit],
        direction: 'above' as const,
      },
    ]
    const said = (limit: number) =>
      method
        .advise?.(measures, judged(limit), givensFor(stations))
        .map((each) => each.text)
        .join() ?? ''
    // By hand: at 1/3000 allowed and 0.5/2000 elsewhere, 1/12000 is left for the segment.
    expect(said(3000)).toMatch(/softest segment is horn to bellcrank/)
    expect(Number(/alone would need (\d+)/.exec(said(3000))?.[1])).toBeGreaterThan(11_000)
    expect(Number(/alone would need (\d+)/.exec(said(3000))?.[1])).toBeLessThan(13_000)
    // The rest alone is 4000: no stiffening of one segment gives 5000.
    expect(said(5000)).toMatch(/it alone cannot/)
    expect(method.advise?.(measures, [], givensFor(stations))).toEqual([])
  })
})

describe('fixture motion never counts as circuit', () => {
  const inputs = { limit_load: given(60, 'moment') }
  const instruments = { load: torque, deflection: level }
  const soft = { stiffness: 2000, friction: 1, free_play: 0.002, fixture_compliance: 1 / 2000 }

  test('read in a column', () => {
    const bench: Bench = { inputs, instruments: { ...instruments, at_fixture: level } }
    const { measures } = measured(bench, rehearsed(bench, soft, 2))
    expect(measures.stiffness?.value).toBeGreaterThan(1940)
    expect(measures.stiffness?.value).toBeLessThan(2060)
  })

  test('taken off by its known compliance', () => {
    const bench: Bench = {
      inputs: {
        ...inputs,
        fixture_compliance: known('fixture_compliance', 1 / 2000, 1e-6, 'angular-compliance'),
      },
      instruments,
    }
    const { measures } = measured(bench, rehearsed(bench, soft, 2))
    expect(measures.stiffness?.value).toBeGreaterThan(1940)
    expect(measures.stiffness?.value).toBeLessThan(2060)
  })

  test('not measured: the circuit looks half as stiff, and that is said', () => {
    const bench: Bench = { inputs, instruments }
    const columns = rehearsed(bench, soft, 2)
    const of = measured(bench, columns)
    expect(of.measures.stiffness?.value).toBeLessThan(1030)
    const notes = method
      .conditions(of.measures, columns, givensFor(bench), of.selection, 0.95)
      .map((each) => each.text)
    expect(notes.join()).toContain('fixture motion was not measured')
  })

  test('given twice is an error', () => {
    const bench: Bench = {
      inputs: { ...inputs, fixture_compliance: given(1e-5, 'angular-compliance') },
      instruments: { ...instruments, at_fixture: level },
    }
    const faults = method.validate?.(rehearsed(bench, soft, 2), givensFor(bench)) ?? []
    expect(faults.map((fault) => fault.code)).toEqual(['circuit-stiffness/fixture-twice'])
  })
})

describe('cockpit loaded, surface held', () => {
  const lbf = 4.4482216152605
  const loads = [0, 25, 50, 75, 100, 75, 50, 25, 0, -25, -50, -75, -100, -75, -50, -25, 0].map((x) => x * lbf)
  // 18 mm at 100 lbf, straight.
  const deflection = loads.map((force) => (force / (100 * lbf)) * 0.018)
  const columns = { load: column('force', loads, 0.01), deflection: column('length', deflection, 1e-6) }
  const words = { loaded_end: 'cockpit', locked_at: 'surface, at zero' }
  const travel = { limit_load: given(100 * lbf, 'force'), full_travel: given(0.12, 'length') }

  test('AMC 22.411(a): a = 18 mm, A = 120 mm gives 15 % (aviation.md 2.4)', () => {
    const { measures } = measured({ inputs: travel, words, instruments: {} }, columns)
    expect(measures.travel_lost?.value).toBeCloseTo(0.15, 12)
    expect(measures.linear_stiffness?.value).toBeCloseTo((100 * lbf) / 0.018, 6)
    expect(measures.stiffness).toBeUndefined()
    expect(measures.surface_stiffness).toBeUndefined()
  })

  test('aviation.md 2.5: 100 lbf at 0.5 m, 18 mm, gearing 1.2 give 6178.086 and 4290.337 N·m/rad', () => {
    const inputs = { ...travel, arm: given(0.5, 'length'), gearing: given(1.2, 'number') }
    const { measures } = measured({ inputs, words, instruments: {} }, columns)
    // The example takes the angle as a/L; the arc sine at 0.036 is longer by a part in 4600.
    const arc = Math.asin(0.036) / 0.036
    expect((measures.secant_at_limit?.value ?? 0) * arc).toBeCloseTo(6178.086, 2)
    const K = (measures.stiffness?.value ?? 0) / (measures.surface_stiffness?.value ?? 1)
    expect(K).toBeCloseTo(1.44, 12)
    expect(((measures.secant_at_limit?.value ?? 0) * arc) / K).toBeCloseTo(4290.337, 2)
    // Lengths are compared with lengths, whatever the arm.
    expect(measures.travel_lost?.value).toBeCloseTo(0.15, 12)
  })

  test('without gearing the surface stiffness is not known, and that is said', () => {
    const bench = { inputs: { ...travel, arm: given(0.5, 'length') }, words, instruments: {} }
    const of = measured(bench, columns)
    expect(of.measures.surface_stiffness).toBeUndefined()
    const notes = method
      .conditions(of.measures, columns, givensFor(bench), of.selection, 0.95)
      .map((each) => each.text)
    expect(notes.join()).toContain('the gearing is not given')
  })
})

test('the exact limit load with an uncertain cell is not enough', () => {
  const bench: Bench = {
    inputs: { limit_load: given(60, 'moment') },
    instruments: { load: torque, deflection: level },
  }
  const columns = rehearsed(bench, { stiffness: 2000, overshoot: 0 }, 8)
  expect(bars(bench, columns, measured(bench, columns)).join()).toContain('limit load')
})

describe('a station read as a length over a ratio in length per angle', () => {
  test('a bellcrank of 80 mm moves 80 mm per radian of itself (derived)', () => {
    const load = [
      0, 10, 20, 30, 40, 50, 60, 50, 40, 30, 20, 10, 0, -10, -20, -30, -40, -50, -60, -50, -40, -30, -20, -10,
      0,
    ]
    const angle = load.map((m) => m / 2000)
    const columns = {
      load: column('moment', load, 0.01),
      deflection: column('angle', angle, 1e-6),
      at_crank: column(
        'length',
        angle.map((x) => 0.4 * x * 0.08),
        1e-7,
      ),
    }
    const bench: Bench = {
      inputs: { limit_load: given(60, 'moment'), ratio_crank: given(0.08, 'length-per-angle') },
      fields: { stations: ['crank'] },
      instruments: {},
    }
    const selection = method.select(columns, givensFor(bench))
    const result = method.estimate(columns, givensFor(bench), selection)
    expect(result.ok && result.value.values.share_load_crank).toBeCloseTo(0.6, 9)
    expect(result.ok && result.value.values.share_crank_fixture).toBeCloseTo(0.4, 9)
  })
})
