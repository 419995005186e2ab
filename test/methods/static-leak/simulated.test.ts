/** Simulated lines: a leaking line does not pass, a tight one does. That intervals hold the truth is kept in coverage.json. */
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../../src/methods/method.ts'
import { normal, random } from '../../../src/quantity/random.ts'
import { instrument } from '../parts.ts'
import { FOOT, KNOT, passes, pitotLine, record, run, type Setup, staticLine } from './bench.ts'

/** The gas changes unlike the sensor, as uncertain as the card says. */
const unlike = (seed: number) => 0.05 * normal(random(seed + 7000))

const withNumbers = (setup: Setup, numbers: Setup['numbers']): Setup => ({
  ...setup,
  numbers: { ...setup.numbers, ...numbers },
})
const withInstruments = (setup: Setup, instruments: Setup['instruments']): Setup => ({
  ...setup,
  instruments: { ...setup.instruments, ...instruments },
})

const share = (setup: Setup, truth: Record<string, number>, limit: number, count = 500): number => {
  let passed = 0
  for (let seed = 1; seed <= count; seed += 1) {
    const columns = record(setup, { gas_less_sensor: unlike(seed), ...truth }, seed)
    if (passes(setup, columns, limit)) passed += 1
  }
  return passed / count
}

describe('1.5 times the limit: at most 5 % of 500 runs pass', () => {
  test('static, 150 ft', () => {
    expect(share(staticLine, { altitude_loss: 150 * FOOT, noise: 0.3 }, 100 * FOOT)).toBeLessThanOrEqual(0.05)
  })
  test('static, divisions of 20 ft', () => {
    const coarse = withInstruments(staticLine, {
      altitude: instrument('al-3', { resolution: 20 * FOOT, offset: 3, drift: 0 }),
    })
    expect(share(coarse, { altitude_loss: 150 * FOOT, start_ratio: 1.13 }, 100 * FOOT)).toBeLessThanOrEqual(
      0.05,
    )
  })
  test('static, limit as small as the uncertainty', () => {
    expect(share(staticLine, { altitude_loss: 15 * FOOT, noise: 0.3 }, 10 * FOOT)).toBeLessThanOrEqual(0.05)
  })
  test('static, an orifice', () => {
    const truth = { altitude_loss: 150 * FOOT, noise: 0.3, path_exponent: 0.5 }
    expect(share(staticLine, truth, 100 * FOOT)).toBeLessThanOrEqual(0.05)
  })
  test('pitot, 15 kt, the gas warming by 0.3 K', () => {
    const truth = { airspeed_loss: 15 * KNOT, warming: 0.3, noise: 0.02, start_ratio: 1.1 }
    expect(share(pitotLine, truth, 10 * KNOT)).toBeLessThanOrEqual(0.05)
  })
})

describe('half the limit: at least 90 % pass', () => {
  test('static', () => {
    expect(
      share(staticLine, { altitude_loss: 50 * FOOT, noise: 0.3, warming: 0.3 }, 100 * FOOT),
    ).toBeGreaterThanOrEqual(0.9)
  })
  test('pitot', () => {
    const truth = { airspeed_loss: 5 * KNOT, noise: 0.02, start_ratio: 1.1 }
    expect(share(pitotLine, truth, 10 * KNOT)).toBeGreaterThanOrEqual(0.9)
  })
})

describe('none passes, even tight', () => {
  const tight = (setup: Setup, truth: Record<string, number> = {}) =>
    share(setup, { noise: 0.3, ...truth }, 100 * FOOT, 50)
  test('the same line in order does', () => expect(tight(staticLine)).toBeGreaterThan(0.85))
  test('suction not reached', () => expect(tight(staticLine, { start_ratio: 0.9 })).toBe(0))
  test('suction just missed, less than the altimeter is sure of: at most 5 %', () =>
    expect(tight(staticLine, { start_ratio: 0.995 })).toBeLessThanOrEqual(0.05))
  test('half a minute', () => expect(tight(staticLine, { hold_time: 50 })).toBe(0))
  test('two readings', () => expect(tight(staticLine, { every: 60 })).toBe(0))
  test('an altimeter without stated accuracy', () => {
    const altitude = instrument('al-4', { gain: null, offset: null })
    expect(tight(withInstruments(staticLine, { altitude }))).toBe(0)
  })
  test('an altimeter without stated drift', () => {
    expect(tight(withInstruments(staticLine, { altitude: instrument('al-5', { drift: null }) }))).toBe(0)
  })
})

describe('what must not matter', () => {
  const columns = record(staticLine, { altitude_loss: 40 * FOOT, noise: 0.3, warming: 0.2 }, 3)
  const plain = run(staticLine, columns).measures.altitude_loss
  const shifted = (by: number, name: 'time' | 'altitude'): Columns => {
    const column = columns[name]
    return column ? { ...columns, [name]: { ...column, values: column.values.map((x) => x + by) } } : columns
  }
  test('when the clock starts', () => {
    const { measures } = run(staticLine, shifted(7200, 'time'))
    expect(measures.altitude_loss?.value).toBeCloseTo(plain?.value ?? Number.NaN, 6)
  })
  test('the setting of the altimeter, where the same for all', () => {
    // 1 hPa of setting is about 8.4 m near the sea; both altimeter and field altitude read it.
    const up = 400 - 408.3
    const other = withNumbers(staticLine, { altimeter_setting: 101_225, field_altitude: 400 + up })
    const { measures } = run(other, shifted(up, 'altitude'))
    expect((measures.altitude_loss?.value ?? Number.NaN) / (plain?.value ?? Number.NaN)).toBeCloseTo(1, 3)
  })
  test('the same line on a gauge and on an altimeter', () => {
    const gauge = withInstruments(
      { ...staticLine, instruments: {} },
      { pressure: instrument('pg-1'), temperature: instrument('th-2'), baro: instrument('ba-1') },
    )
    const altimeter = { ...staticLine, instruments: { temperature: instrument('th-2') } }
    const losses = [gauge, altimeter].map(
      (setup) => run(setup, record(setup, { altitude_loss: 40 * FOOT }, 1)).measures.altitude_loss?.value,
    )
    for (const loss of losses) expect(loss).toBeCloseTo(40 * FOOT, 3)
  })
  test('identical readings still have an uncertainty', () => {
    const still = { ...columns, altitude: { ...columns.altitude, values: new Float64Array(7).fill(710) } }
    const { measures } = run(staticLine, still as Columns)
    expect(Object.keys(measures.altitude_loss?.parts ?? {}).join()).toContain('resolution_of_altitude')
  })
})
