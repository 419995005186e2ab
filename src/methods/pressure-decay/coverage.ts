/** A wing tank of about 96 L under suction (invented): read by hand, and logged. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Columns, Givens } from '../method.ts'
import { airViscosity } from './constants.ts'

/** m³/s of 1 cm³/min. */
const LEAK = 1e-6 / 60
const PER_HOUR = 1 / 3600
const WARM = 293.15
const AMBIENT = 101_325

/** A thermometer in the gas itself, which runs ahead of the skin by a ramp and a bend. */
const inTheGas = (columns: Columns, truth: Readonly<Record<string, number>>): Columns => {
  const { time, temperature } = columns
  if (!time || !temperature) return columns
  const end = time.values.at(-1) ?? Number.NaN
  const values = temperature.values.map((sensor, row) => {
    const share = (time.values[row] as number) / end
    const bend = 1 - Math.abs(2 * share - 1)
    return sensor + (truth.gas_less_sensor ?? 0) * share + (truth.gas_less_sensor_bend ?? 0) * bend
  })
  return { ...columns, temperature: { ...temperature, values } }
}

/** p V of the leak at the temperature of the gas, and the liquid through one laminar path (Hagen–Poiseuille). */
const expected = (_: Readonly<Record<string, number>>, { numbers }: Givens) => {
  const { liquid_viscosity = 0, liquid_head = 0, test_pressure = 0 } = numbers
  const throughput = (LEAK * 101_325 * WARM) / 288.15
  const squares = Math.abs((AMBIENT + test_pressure) ** 2 - AMBIENT ** 2)
  const liquid = (throughput * 2 * airViscosity(WARM) * liquid_head) / (liquid_viscosity * squares)
  return { leak_rate: LEAK, leak_throughput: throughput, liquid_leak: liquid }
}

const BENDS =
  'the pressure does not fall along a straight line, since the gas warms unevenly and walls and leak follow the pressure; its bend counts as scatter'

const byHand: CoverageSetup = {
  title: 'read every 20 minutes for 3 hours',
  readings: 'few',
  givens: {
    test_pressure: '-2500 Pa',
    volume: '0.0964 m^3 ± 0.0006 m^3',
    volume_compliance: '0.02 L/kPa ± 0.01 L/kPa',
    thermal_expansion: '23e-6 1/K ± 4e-6 1/K',
    temperature_error: '0.1 K (u)',
    contents: 'dry',
    settle: '0 s',
    hold: '3 h',
    liquid_viscosity: '0.6e-3 Pa·s ± 0.04e-3 Pa·s',
    liquid_head: '3 kPa ± 0.1 kPa',
  },
  instruments: {
    pressure: certified('gauge', { resolution: 0.1, gain: 0.002, offset: 2, drift: 1 * PER_HOUR }),
    temperature: certified('thermometer', { resolution: 0.001, offset: 0.1 }),
    baro: certified('barometer', { resolution: 1, offset: 30, drift: 3 * PER_HOUR }),
  },
  truth: {
    leak_rate: LEAK,
    start_pressure: -2600,
    every: 1200,
    temperature: WARM,
    warming: 0.4,
    ambient: AMBIENT,
    ambient_change: 80,
    path_exponent: 1,
  },
  varies: { gas_less_sensor: 0.1, gas_less_sensor_bend: 0.05, path_exponent: 0.29 },
  noise: { noise: 2, temperature_noise: 0.005, ambient_noise: 2 },
  expected,
  perfect: [
    'mean_pressure',
    'pressure_at_start',
    'pressure_least',
    'pressure_rate',
    'raw_rate',
    'temperature_part',
    'loss_fraction',
    'halves',
  ],
  inPlace: inTheGas,
  wide: { raw_rate: BENDS, pressure_at_start: BENDS, pressure_least: BENDS },
}

export const coverage: Coverage = {
  setups: [
    byHand,
    {
      ...byHand,
      title: 'logged every 10 seconds for 3 hours',
      readings: 'many',
      truth: { ...byHand.truth, every: 10 },
    },
  ],
  without: {
    detectable_leak: 'says what the budget of this very run can tell: no true value stands behind it',
  },
}
