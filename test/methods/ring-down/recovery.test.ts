/** The true frequency and damping lie inside the stated interval; the truth is put into the simulated record. */
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../../src/methods/method.ts'
import { standardUncertainty } from '../../../src/quantity/quantity.ts'
import { inside, measured, record, run, sensor, type Truth } from './bench.ts'

/** At the ends of the range, 1 to 200 Hz and 0.1 to 10 %; what lies between is in the kept coverage (2000 runs). */
const RUNS = 300
/** Scale and zero of the sensor drop out; without them the engine has less to do. */
const IDEAL = { instruments: { signal: sensor({ gain: 0, offset: 0 }) } }

const truthOf = (truth: Truth): Record<string, number> => {
  const { frequency = 10, damping_ratio: zeta = 0.02 } = truth
  return {
    frequency,
    natural_frequency: frequency / Math.sqrt(1 - zeta * zeta),
    damping_ratio: zeta,
    log_decrement: (2 * Math.PI * zeta) / Math.sqrt(1 - zeta * zeta),
    damping_early: zeta,
    damping_late: zeta,
    damping_change: 0,
  }
}

/** Share of runs, by measure, whose 95 % interval holds the truth. */
const coverage = (truth: Truth, seed: number): Record<string, number> => {
  const expected = truthOf(truth)
  const hits = Object.fromEntries(Object.keys(expected).map((name) => [name, 0]))
  for (let k = 0; k < RUNS; k += 1) {
    const result = measured(record(truth, seed * RUNS + k, IDEAL), { clockError: 0, ...IDEAL })
    for (const [name, value] of Object.entries(expected)) {
      if (result.ok && inside(result.value.measures[name], value)) hits[name] = (hits[name] ?? 0) + 1
    }
  }
  return Object.fromEntries(Object.entries(hits).map(([name, count]) => [name, count / RUNS]))
}

describe('95 % intervals hold the truth at the ends of the range, with noise, offset and drift', () => {
  // Four standard deviations of a share of 95 %.
  const far = 4 * Math.sqrt((0.95 * 0.05) / RUNS)
  test.each([
    ['1 Hz, 0.1 %', { frequency: 1, damping_ratio: 0.001, rate: 12, duration: 30, drift: 0.002 }],
    ['200 Hz, 10 %', { frequency: 200, damping_ratio: 0.1, rate: 4000, duration: 0.04, drift: 0.5 }],
  ] as const)(
    '%s',
    (_, truth) => {
      const shares = coverage({ noise: 0.005, offset: 0.3, ...truth }, truth.frequency)
      for (const [name, share] of Object.entries(shares)) {
        expect(share, name).toBeGreaterThanOrEqual(0.95 - far)
        // Halves of five turns have fewer degrees of freedom than they are given: their interval is wide.
        if (!name.startsWith('damping_') || name === 'damping_ratio')
          expect(share, name).toBeLessThanOrEqual(0.95 + far)
      }
    },
    60_000,
  )
})

const map = (columns: Columns, name: 'time' | 'signal', by: (value: number) => number): Columns => {
  const column = columns[name]
  return column ? { ...columns, [name]: { ...column, values: column.values.map(by) } } : columns
}

describe('what must not matter', () => {
  const columns = record({ frequency: 7, damping_ratio: 0.025, noise: 0.004 }, 5)
  const plain = run(columns).measures
  const same = (
    other: Columns,
    names = ['frequency', 'damping_ratio', 'log_decrement', 'damping_change'],
  ) => {
    const { measures } = run(other)
    for (const name of names) {
      const [a, b] = [plain[name], measures[name]]
      const [uPlain = Number.NaN, u = Number.NaN] = [a, b].map(
        (each) => (each && standardUncertainty(each)) ?? Number.NaN,
      )
      // The clock's rounding may move the end of a block by one reading.
      expect(Math.abs((b?.value ?? Number.NaN) - (a?.value ?? Number.NaN)), name).toBeLessThan(0.05 * u)
      expect(u / uPlain, name).toBeCloseTo(1, 1)
    }
  }
  test('the sign of the signal', () => same(map(columns, 'signal', (y) => -y)))
  test('its scale, as of g instead of m/s²', () => same(map(columns, 'signal', (y) => y / 9.80665)))
  test('its offset', () => same(map(columns, 'signal', (y) => y + 40)))
  test('when the clock starts', () => same(map(columns, 'time', (t) => t + 3600)))
  test('a slower clock gives a lower frequency and the same damping', () => {
    const { measures } = run(map(columns, 'time', (t) => 2 * t))
    expect(measures.frequency?.value).toBeCloseTo((plain.frequency?.value ?? 0) / 2, 7)
    expect(measures.damping_ratio?.value).toBeCloseTo(plain.damping_ratio?.value ?? 0, 7)
  })
})

test('the clock of the logger is in the frequency and not in the damping', () => {
  const columns = record({ noise: 1e-6 }, 3)
  const { measures } = run(columns, { clockError: 1e-3 })
  const clock = measures.frequency?.parts?.['method:simulated/rate_of_the_clock']
  // ± 0.1 % rectangular of 10 Hz
  expect(Math.abs(clock?.u ?? 0)).toBeCloseTo((10 * 1e-3) / Math.sqrt(3), 6)
  expect(measures.damping_ratio?.parts?.['method:simulated/rate_of_the_clock']?.u ?? 0).toBeCloseTo(0, 9)
})

describe('digits', () => {
  test('a record without noise still has an uncertainty from its digit', () => {
    const setup = { instruments: { signal: sensor({ resolution: 0.01 }) } }
    const { measures } = run(record({ noise: 0, damping_ratio: 0.03 }, 2, setup), setup)
    const damping = measures.damping_ratio
    expect(damping && standardUncertainty(damping)).toBeGreaterThan(1e-5)
    expect(inside(damping, 0.03)).toBe(true)
  })
  test('a signal that does not move is refused, not given a damping', () => {
    const result = measured(map(record({}, 1), 'signal', () => 1.25))
    expect(result).toMatchObject({ ok: false, error: expect.stringContaining('does not move') })
  })
})

test('a sensor without stated accuracy leaves only the amplitude not known', () => {
  const { measures } = run(record({}, 4), {
    instruments: { signal: sensor({ gain: null, offset: null }) },
  })
  expect(measures.amplitude?.parts).toBeNull()
  expect(measures.damping_ratio?.parts).not.toBeNull()
  expect(measures.frequency?.parts).not.toBeNull()
})

test('`band` finds the weaker of two modes far apart, and says that there is more', () => {
  const two = record({ frequency: 4, second_frequency: 30, second_amplitude: 12, rate: 400 }, 6)
  expect(run(two).measures.frequency?.value).toBeCloseTo(30, 1)
  const banded = run(two, { fields: { band: { low: 2, high: 8 } } })
  expect(banded.measures.frequency?.value).toBeCloseTo(4, 0)
  expect(banded.bars.length).toBeGreaterThan(0)
})

test('a hundred thousand readings in seconds', () => {
  const long = record({ frequency: 10, damping_ratio: 0.002, rate: 5000, duration: 20, noise: 0.01 }, 1)
  expect(long.time?.values.length).toBe(100_001)
  expect(inside(run(long).measures.damping_ratio, 0.002)).toBe(true)
})
