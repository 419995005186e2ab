/** What readings come to: the tank that warms, readings that stay put, units, kinds of gauge, and what bars a pass. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Column, Columns } from '../../../src/methods/method.ts'
import { simulateMeasures } from '../../../src/methods/monte-carlo.ts'
import { method, planHold } from '../../../src/methods/pressure-decay/index.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import type { Quantity } from '../../../src/quantity/types.ts'
import { instrument } from '../parts.ts'
import { CCM, hangar, tank, withInstruments, withNumbers } from './setups.ts'
import { givensOf, judged, measured, quantities, type Setup } from './simulate.ts'
import { fieldOf, siOf } from './units.ts'

const readings = (setup: Setup, truth: Readonly<Record<string, number>>, seed = 7): Columns =>
  method.rehearse(givensOf(setup), { ...hangar, ...truth }, setup.instruments, seed)
const without = (columns: Columns, name: string): Columns =>
  Object.fromEntries(Object.entries(columns).filter(([key]) => key !== name))
const changed = (columns: Columns, name: string, by: (value: number, row: number) => number): Columns => {
  const column = columns[name] as Column
  return { ...columns, [name]: { ...column, values: column.values.map(by) } }
}
const value = (measures: Readonly<Record<string, Quantity>>, name: string): number =>
  measures[name]?.value ?? Number.NaN

describe('a tank that warms by 2 K under vacuum and does not leak', () => {
  const columns = readings(tank, { warming: 2, ambient_change: 0, leak_rate: 0 })
  const limit = 3 * CCM
  test('is judged tight', () => {
    const outcome = judged(tank, columns, limit)
    expect(outcome.bars).toEqual([])
    expect(outcome.pass).toBe(true)
  })
  test('is not, where the same readings are taken without their temperature', () => {
    const ignored = { ...tank, fields: { temperature: 'not measured' } }
    const outcome = judged(ignored, without(columns, 'temperature'), limit)
    expect(outcome.pass).toBe(false)
    // 2 K · P/T in the stiff tank is 674 Pa in 3 h; walls and metal take a little off it.
    expect(value(outcome.measures, 'leak_rate') / CCM).toBeGreaterThan(3)
  })
  test('temperature alone explains the rise of the gauge', () => {
    const { measures } = judged(tank, columns, limit)
    expect(value(measures, 'temperature_part') / value(measures, 'raw_rate')).toBeCloseTo(1, 1)
  })
})

describe('readings that stay put', () => {
  test('never give zero uncertainty, in no measure', () => {
    const still = (name: string, kind: Column['dim'], reading: number, resolution: number) => [
      name,
      { values: new Float64Array(30).fill(reading), dim: kind, resolution } satisfies Column,
    ]
    const columns: Columns = Object.fromEntries([
      [
        'time',
        {
          values: Float64Array.from({ length: 30 }, (_, k) => k * 420),
          dim: [0, 0, 1, 0, 0, 0],
          resolution: 0,
        },
      ],
      still('pressure', [-1, 1, -2, 0, 0, 0], -2700, 1),
      still('temperature', [0, 0, 0, 0, 1, 0], 291.3, 0.01),
      still('baro', [-1, 1, -2, 0, 0, 0], 100_900, 10),
    ])
    const exactTank: Setup = {
      numbers: {
        ...tank.numbers,
        temperature_error: 0,
        volume: 0.0964,
        volume_compliance: 0,
        thermal_expansion: 0,
      },
      instruments: {},
    }
    const { measures } = measured(exactTank, columns)
    for (const [name, quantity] of Object.entries(measures)) {
      expect(standardUncertainty(quantity), name).toBeGreaterThan(0)
    }
    // r/√6 end to end over the fitted hold, r = 1 Pa: the limiting case by hand.
    const held = 29 * 420 - 840
    const u = standardUncertainty(measures.raw_rate as Quantity) as number
    expect(u).toBeCloseTo(1 / Math.sqrt(6) / held, 6)
  })
})

test('US units and SI give the same measures', () => {
  const si = readings(tank, { leak_rate: 3 * CCM })
  const inHg = siOf(1, 'inHg')
  const psi = siOf(1, 'psi')
  const us = [
    (c: Columns) => changed(c, 'pressure', (p) => siOf(p / psi, 'psi')),
    (c: Columns) => changed(c, 'baro', (b) => siOf(b / inHg, 'inHg')),
    (c: Columns) => changed(c, 'temperature', (t) => siOf((t - 273.15) * 1.8 + 32, 'degF')),
  ].reduce((columns, convert) => convert(columns), si)
  const [a, b] = [measured(tank, si).measures, measured(tank, us).measures]
  for (const name of ['leak_rate', 'pressure_rate', 'raw_rate', 'mean_pressure', 'loss_fraction']) {
    expect(value(b, name) / value(a, name), name).toBeCloseTo(1, 6)
  }
})

test('the same gas read by gauge, absolute, vacuum gauge and U-tube is the same leak', () => {
  const perfect = { temperature: instrument('th'), baro: instrument('ba') }
  const truth = { noise: 0, temperature_noise: 0, leak_rate: 4 * CCM }
  for (const name of ['pressure', 'absolute_pressure', 'vacuum', 'leg_article']) {
    const extra: Setup['instruments'] =
      name === 'leg_article' ? { leg_open: instrument('u', { density: 998.2 }) } : {}
    const setup = {
      ...tank,
      instruments: { ...perfect, ...extra, [name]: instrument('u', { density: 998.2 }) },
    }
    const { measures } = measured(setup, readings(setup, truth))
    expect(value(measures, 'leak_rate') / CCM, name).toBeCloseTo(4, 3)
  }
})

test('a second tight volume beside the article serves as thermometer', () => {
  const truth = { noise: 0, temperature_noise: 0, leak_rate: 4 * CCM, warming: 1.5, ambient_change: 200 }
  const setup: Setup = {
    ...withNumbers(tank, { thermal_expansion: 0 }),
    instruments: { pressure: instrument('pg'), temperature: instrument('th'), baro: instrument('ba') },
  }
  const columns = readings(setup, truth)
  const kelvin = columns.temperature?.values ?? new Float64Array(0)
  const air = columns.baro?.values ?? new Float64Array(0)
  const sealed = kelvin.map((t, row) => (98_000 * t) / (kelvin[0] ?? 1) - (air[row] ?? 0))
  const second: Columns = {
    ...without(columns, 'temperature'),
    reference_pressure_reading: { values: sealed, dim: [-1, 1, -2, 0, 0, 0], resolution: 0 },
  }
  // Without a thermometer the level is taken as 15 °C: the rate is off by 293/288 at most.
  expect(value(measured(setup, second).measures, 'leak_rate') / CCM).toBeCloseTo(4, 0)
  const both = { ...second, temperature: columns.temperature as Column }
  expect(value(measured(setup, both).measures, 'leak_rate') / CCM).toBeCloseTo(4, 3)
})

test('properties: the clock may start anywhere, and a leak adds up (simulated, no noise)', () => {
  const setup = {
    ...tank,
    instruments: { pressure: instrument('pg'), temperature: instrument('th'), baro: instrument('ba') },
  }
  const range = (min: number, max: number) => fc.double({ min, max, noNaN: true })
  fc.assert(
    fc.property(range(-20, 20), range(-1e5, 1e5), range(-2, 2), (leak, shift, warming) => {
      const columns = readings(setup, {
        noise: 0,
        temperature_noise: 0,
        every: 60,
        leak_rate: leak * CCM,
        warming,
      })
      const moved = changed(columns, 'time', (t) => t + shift)
      const [a, b] = [columns, moved].map((each) => value(measured(setup, each).measures, 'leak_rate') / CCM)
      // What is left is the trapezia of effective time: (60 s over the time of the decay)²/12.
      expect(Math.abs((a as number) - leak)).toBeLessThan(1e-4 * Math.abs(leak) + 1e-4)
      expect(b).toBeCloseTo(a as number, 4)
    }),
    { numRuns: 30 },
  )
})

test('first order agrees with Monte Carlo (JCGM 101) within a few per cent', () => {
  const columns = readings(tank, { leak_rate: 3 * CCM })
  const result = measured(tank, columns)
  const input = {
    runId: 'simulated',
    method,
    schema: method.schema,
    columns,
    instruments: tank.instruments,
    inputs: quantities(tank.numbers),
    words: { contents: 'dry' },
    fields: {},
  }
  const drawn = simulateMeasures(input, result, 4000, 3)
  for (const name of ['leak_rate', 'mean_pressure', 'loss_fraction', 'temperature_part']) {
    const u = standardUncertainty(result.measures[name] as Quantity) as number
    expect((drawn[name]?.u ?? 0) / u, name).toBeGreaterThan(0.93)
    expect((drawn[name]?.u ?? 0) / u, name).toBeLessThan(1.07)
  }
})

describe('what bars a pass says so', () => {
  const bars = (setup: Setup, columns: Columns) => judged(setup, columns, 6 * CCM).bars.join(' ')
  test('nothing, where all is well', () => {
    expect(bars(tank, readings(tank, {}))).toBe('')
  })
  test('test pressure not reached', () => {
    expect(bars(tank, readings(tank, { start_pressure: -2400 }))).toContain(
      'test pressure of −2500 Pa was reached',
    )
  })
  test('test pressure reached by the needle, not with confidence', () => {
    expect(bars(tank, readings(tank, { start_pressure: -2502, leak_rate: -0.1 * CCM }))).toMatch(
      /not shown with 95 %/,
    )
  })
  test('half of it lost in the hold', () => {
    expect(bars(tank, readings(tank, { leak_rate: 20 * CCM }))).toContain('at least half')
  })
  test('hold too short', () => {
    expect(bars(tank, readings(tank, { hold_time: 9000 }))).toContain('180 min are asked for')
  })
  test('settling not over: the gas still cools where the sensor does not', () => {
    const settling = changed(readings(tank, {}), 'pressure', (p, row) => p - 400 * Math.exp(-row / 8))
    expect(bars(tank, settling)).toContain('two halves')
  })
  test('three readings', () => {
    expect(bars(tank, readings(tank, { every: 5400, hold_time: 16_200 }))).toContain('too few')
  })
  test('a row without its temperature is left out, and that is said', () => {
    const gap = changed(readings(tank, {}), 'temperature', (t, row) => (row === 9 ? Number.NaN : t))
    expect(
      judged(tank, gap, 6 * CCM)
        .remarks.map((remark) => remark.text)
        .join(' '),
    ).toContain('One row of the hold is left out')
  })
})

describe('before the test', () => {
  test('the planned hold brings U to a quarter of the limit', () => {
    const plan = planHold(givensOf(tank), tank.instruments, 6 * CCM, 300)
    expect(plan.decidable).toBe(true)
    if (!plan.decidable) return
    expect(plan.U).toBeLessThanOrEqual(1.5 * CCM)
    const setup = withNumbers(tank, { hold: plan.hold })
    const { measures } = measured(setup, readings(setup, { noise: 0, leak_rate: 0, start_pressure: -2600 }))
    const U = 2 * (standardUncertainty(measures.leak_rate as Quantity) as number)
    expect(U / plan.U).toBeGreaterThan(0.8)
    expect(U / plan.U).toBeLessThan(1.2)
  })
  test('what no hold can decide is said', () => {
    const drifting = withInstruments(tank, {
      pressure: instrument('pg', { resolution: 1, drift: 200 / 3600 }),
    })
    expect(planHold(givensOf(tank), drifting.instruments, 6 * CCM)).toMatchObject({ decidable: false })
  })
  test('a gauge without stated drift: not known', () => {
    const silent = withInstruments(tank, { pressure: instrument('pg', { resolution: 1, drift: null }) })
    expect(planHold(givensOf(tank), silent.instruments, 6 * CCM)).toMatchObject({ decidable: false })
  })
})

test('the smallest detectable leak is 3.29 u where the degrees of freedom are many (ISO 11843-1)', () => {
  const { measures } = measured(tank, readings(tank, { leak_rate: 0 }))
  const leak = measures.leak_rate as Quantity
  const completed = method.complete?.(measures).detectable_leak
  const ratio = (completed?.value ?? 0) / (standardUncertainty(leak) as number)
  expect(ratio).toBeGreaterThan(3.2897)
  expect(ratio).toBeLessThan(3.31)
  expect(fieldOf('measures', 'detectable_leak').kind).toBe('volume-flow')
})

test('advice names the digit that is too coarse, and by how much', () => {
  const coarse = withInstruments(tank, { pressure: instrument('pg', { resolution: 250, drift: 0 }) })
  const { measures } = measured(coarse, readings(coarse, { noise: 0 }))
  const leak = measures.leak_rate as Quantity
  const term = {
    criterion: 'leak',
    verdict: 'undetermined',
    measures: ['leak_rate'],
    value: leak.value,
    limits: [0.2 * CCM],
    direction: 'below',
  } as const
  const advice = method.advise?.(measures, [term], givensOf(coarse)) ?? []
  expect(advice[0]?.text).toMatch(/too coarse.*times finer/)
})
