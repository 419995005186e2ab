/** Leak arithmetic against values from outside: published rules, textbook physics, exact conversions. */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Columns } from '../../src/methods/method.ts'
import { airViscosity, pressureAtHeight } from '../../src/methods/pressure-decay/constants.ts'
import { expectedU } from '../../src/methods/pressure-decay/hold-time.ts'
import { method } from '../../src/methods/pressure-decay/index.ts'
import { column, instrument } from '../methods/parts.ts'

const columnsOf = (
  time: readonly number[],
  pressure: readonly number[],
  temperature: readonly number[],
  baro: readonly number[],
): Columns => ({
  time: column('time', time),
  pressure: column('pressure', pressure),
  temperature: column('temperature', temperature),
  baro: column('pressure', baro),
})
const givensOf = (numbers: Record<string, number>) => ({
  numbers: {
    temperature_error: 0,
    settle: 0,
    hold: 1,
    thermal_expansion: 0,
    volume_compliance: 0,
    ...numbers,
  },
  words: { contents: 'dry' },
  fields: {},
})
const estimate = (columns: Columns, numbers: Record<string, number>) => {
  const givens = givensOf(numbers)
  const result = method.estimate(columns, givens, method.select(columns, givens))
  if (!result.ok) throw new Error(result.error)
  return result.value
}
const value = (columns: Columns, numbers: Record<string, number>, name: string): number =>
  estimate(columns, numbers).values[name] ?? Number.NaN

describe('synthetic vacuum decay, exact rational least squares on the printed columns', () => {
  const text = readFileSync(new URL('./data/synthetic_leak_vacuum_decay.csv', import.meta.url), 'utf8')
  const rows = text
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').map(Number))
  const at = (index: number) => rows.map((row) => row[index] ?? Number.NaN)
  const columns = columnsOf(at(0), at(1), at(3), at(2))
  const { values, scatter } = estimate(columns, { test_pressure: -7000, volume: 0.08 })

  test('slope of the raw gauge and its standard error', () => {
    expect(values.raw_rate).toBeCloseTo(0.0542963709677, 12)
    expect(scatter.raw_rate?.['gauge/slope']?.u).toBeCloseTo(0.000594075102934, 13)
    expect(scatter.raw_rate?.['gauge/slope']?.dof).toBe(29)
  })
  test('compensated slope and its standard error', () => {
    expect(values.pressure_rate).toBeCloseTo(0.0247756090681, 12)
    expect(scatter.pressure_rate?.['hold/slope']?.u).toBeCloseTo(0.000350749453429, 13)
  })
  test('the leak covers the truth of 2.0e-3 Pa·m³/s; the raw slope is 2.2 times too large', () => {
    const u = Math.abs(scatter.leak_throughput?.['hold/slope']?.u ?? Number.NaN)
    expect(u).toBeCloseTo(2.806e-5, 6)
    expect(Math.abs((values.leak_throughput ?? 0) - 2e-3)).toBeLessThan(2.0452296 * u)
    expect((0.08 * (values.raw_rate ?? 0)) / 2e-3).toBeGreaterThan(2.1)
  })
})

describe('ideal gas in a stiff vessel', () => {
  test.each([
    [273.15, 370.95],
    [288.15, 351.64],
    [293.15, 345.64],
    [298.15, 339.85],
  ])('at %f K and 101 325 Pa, 1 K is %f Pa', (kelvin, perKelvin) => {
    // A change small enough to be straight: p/T.
    const change = 1e-3
    const p = 101_325 * (1 + change / kelvin) - 100_000
    const columns = columnsOf([0, 100], [1325, p], [kelvin, kelvin + change], [1e5, 1e5])
    const part = value(columns, { test_pressure: 1325, volume: 0.1 }, 'temperature_part')
    expect((part * 100) / change).toBeCloseTo(perKelvin, 2)
  })
  test('p_abs 94 445 Pa at 293.25 K is 94 412.7937 Pa at 293.15 K', () => {
    const columns = columnsOf([0, 1], [-6880, -6880], [293.15, 293.25], [101_325, 101_325])
    const rate = value(columns, { test_pressure: -6880, volume: 0.1 }, 'pressure_rate')
    expect(94_445 + rate).toBeCloseTo(94_412.7937, 4)
  })
  test('a barometer that falls by 20 Pa in 1800 s, not read, is 8.889e-4 Pa·m³/s of false inflow into 80 L', () => {
    const falling = columnsOf([0, 1800], [-7000, -6980], [293.15, 293.15], [101_325, 101_305])
    const unread = columnsOf([0, 1800], [-7000, -6980], [293.15, 293.15], [101_325, 101_325])
    const numbers = { test_pressure: -6990, volume: 0.08 }
    expect(value(falling, numbers, 'leak_throughput')).toBeCloseTo(0, 12)
    expect(value(unread, numbers, 'leak_throughput')).toBeCloseTo(8.889e-4, 7)
  })
  test('molar leak of 40 CFR 1065.644 from the throughput: 2.965705e-4 mol/s', () => {
    const columns = columnsOf([0, 70], [-76_025, -50_725], [293.15, 293.15], [101_325, 101_325])
    const throughput = value(columns, { test_pressure: -63_375, volume: 0.002 }, 'leak_throughput')
    expect(throughput / (8.314472 * 293.15)).toBeCloseTo(2.965705e-4, 10)
  })
})

describe('walls that give: q = (V + P dV/dp) dp/dt, from d(PV)/dt', () => {
  test('80 L, 0.2 L per 7 kPa at 95 kPa count as 82.71 L', () => {
    const give = 0.2e-3 / 7000
    const numbers = { volume: 0.08 + 6325 * give, volume_compliance: give, test_pressure: -6325 }
    const columns = columnsOf([0, 100], [-6325.5, -6324.5], [293.15, 293.15], [101_325, 101_325])
    expect(value(columns, numbers, 'leak_throughput') / 0.01).toBeCloseTo(0.0827143, 6)
  })
  test('a syringe step on the spot gives the same volume or the same compliance', () => {
    const give = 0.2e-3 / 7000
    const zero = 0.08 + 6325 * give
    const columns = columnsOf([0, 100], [-6325, -6324], [293.15, 293.15], [101_325, 101_325])
    const known = value(columns, { volume: zero, volume_compliance: give, test_pressure: -6325 }, 'leak_rate')
    // Δp = P v/(V + P dV/dp), by hand for a step of 20 mL.
    const step = (95_000 * 20e-6) / (0.08 + 95_000 * give)
    const syringe = { syringe_volume: 20e-6, syringe_step: step, test_pressure: -6325 }
    expect(value(columns, { ...syringe, volume_compliance: give }, 'leak_rate') / known).toBeCloseTo(1, 9)
    const compliance = { ...givensOf({ ...syringe, volume: zero }) }
    const { volume_compliance: _, ...numbers } = compliance.numbers
    const result = method.estimate(columns, { ...compliance, numbers }, method.select(columns, compliance))
    expect(result.ok && (result.value.values.leak_rate ?? 0) / known).toBeCloseTo(1, 9)
  })
})

describe('laminar decay, dp = dp₀ exp(−t/τ) with τ = V dp₀/q₀', () => {
  const tau = (0.05 * 7000) / 2e-3
  test('V 50 L, 7000 Pa, q₀ 2e-3 Pa·m³/s: τ 175 000 s, 23.9589 Pa in 600 s', () => {
    expect(7000 * (1 - Math.exp(-600 / tau))).toBeCloseTo(23.9589, 4)
  })
  test('the leak at the test pressure is exact on effective time, however far the pressure falls', () => {
    const time = Array.from({ length: 601 }, (_, k) => k * 200)
    const falling = time.map((t) => 7000 * Math.exp(-t / tau))
    const still = time.map(() => 293.15)
    const columns = columnsOf(
      time,
      falling,
      still,
      time.map(() => 101_325),
    )
    const numbers = { test_pressure: 7000, volume: 0.05 }
    expect(value(columns, numbers, 'leak_throughput')).toBeCloseTo(2e-3, 8)
    // On plain time the same readings say less than three quarters of it.
    expect(-0.05 * value(columns, numbers, 'pressure_rate')).toBeLessThan(1.5e-3)
  })
  test('simulated readings of such a leak follow the exponential', () => {
    const givens = givensOf({ test_pressure: 7000, volume: 0.05, hold: 120_000 })
    // 2e-3 Pa·m³/s at 293.15 K as volume at the reference of 288.15 K and 101 325 Pa.
    const leak = (2e-3 * 288.15) / (293.15 * 101_325)
    const truth = { leak_rate: leak, start_pressure: 7000, every: 600 }
    const shown = method.rehearse(givens, truth, { pressure: instrument('perfect') }, 1)
    const last = shown.pressure?.values[100] ?? Number.NaN
    expect(last).toBeCloseTo(7000 * Math.exp(-60_000 / tau), 2)
  })
})

describe('conversions of leak rates, exact', () => {
  // Pa·m³/s of gas at 20 °C for 1 std cm³/min at 0, 15 and 20 °C.
  test.each([
    [273.15, 1.8124e-3],
    [288.15, 1.7180533e-3],
    [293.15, 1.68875e-3],
  ])('reference %f K', (kelvin, throughput) => {
    const rate = throughput / 0.1
    const columns = columnsOf([0, 100], [7000, 7000 - 100 * rate], [293.15, 293.15], [101_325, 101_325])
    const numbers = { test_pressure: 7000 - 50 * rate, volume: 0.1, reference_temperature: kelvin }
    expect(value(columns, numbers, 'leak_rate') * 6e7).toBeCloseTo(1, 6)
  })
})

describe('constants', () => {
  test('viscosity of air at 20 °C is 1.8134e-5 Pa·s (Sutherland, U.S. Standard Atmosphere 1976)', () => {
    expect(airViscosity(293.15)).toBeCloseTo(1.8134e-5, 9)
  })
  test('standard atmosphere: 89 874.6 Pa at 1000 m (ICAO Doc 7488, from memory)', () => {
    expect(pressureAtHeight(1000)).toBeCloseTo(89_874.6, -1)
  })
})

describe('time of the test', () => {
  const numbers = { test_pressure: -7000, volume: 0.05, reference_temperature: 293.15, elevation: 0 }
  // At the reference conditions of the gas itself, m³/s times p_R is Pa·m³/s.
  const throughput = (givens: Record<string, number>, hold: number, resolution: number) =>
    (expectedU(
      givensOf({ ...numbers, ...givens }),
      { absolute_pressure: instrument('gauge', { resolution }), baro: instrument('barometer') },
      0,
      hold,
      Number.POSITIVE_INFINITY,
    ) *
      101_325) /
    2
  test('temperature alone: V 50 L, 94 325 Pa, u(ΔT) 0.05 K, 600 s: u = 1.34068e-3 Pa·m³/s', () => {
    expect(throughput({ temperature_error: 0.05 }, 600, 0)).toBeCloseTo(1.34068e-3, 8)
  })
  test('digits alone: d 1 Pa, V 50 L, U = 1e-3 Pa·m³/s (k = 2) is reached after 40.825 s', () => {
    const givens = givensOf(numbers)
    const instruments = { pressure: instrument('gauge', { resolution: 1 }), baro: instrument('barometer') }
    // Readings without end: only the digit end to end is left.
    const U = expectedU(givens, instruments, 0, 40.825, 1e-6) * 101_325
    expect(U).toBeCloseTo(1e-3, 6)
  })
})
