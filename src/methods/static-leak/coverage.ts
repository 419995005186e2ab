/** Static and pitot lines (invented), read every 10 seconds and logged. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Columns } from '../method.ts'

type Truth = Readonly<Record<string, number>>

const FOOT = 0.3048
const KNOT = 1852 / 3600

/** A thermometer in the gas itself, which runs ahead of the sensor by a ramp and a bend. */
const inTheGas = (columns: Columns, truth: Truth): Columns => {
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

const BENDS =
  'the pressure does not fall along a straight line, since the gas warms unevenly and the leak follows the pressure; its bend counts as scatter'

const staticLine: CoverageSetup = {
  title: 'static line, seven readings of an altimeter',
  readings: 'few',
  givens: {
    side: 'static',
    test_climb: '1000 ft',
    field_altitude: '400 m ± 6 m',
    temperature_error: '0.05 K (u)',
    hold: '60 s',
  },
  instruments: {
    altitude: certified('altimeter', { offset: 3, drift: 1 / 3600 }),
    temperature: certified('thermometer', { resolution: 0.001, offset: 0.1 }),
  },
  truth: { altitude_loss: 20 * FOOT, start_ratio: 1.02, path_exponent: 1, warming: 0.1 },
  varies: { gas_less_sensor: 0.05, gas_less_sensor_bend: 0.025, path_exponent: 0.29 },
  noise: { noise: 0.5, temperature_noise: 0.002 },
  expected: ({ altitude_loss = 0 }) => ({ altitude_loss }),
  perfect: ['pressure_rate', 'raw_rate', 'temperature_part', 'start_ratio', 'least_ratio', 'halves'],
  inPlace: inTheGas,
}

const pitotLine: CoverageSetup = {
  ...staticLine,
  title: 'pitot line, thirteen readings of an airspeed indicator',
  givens: { side: 'pitot', test_airspeed: '150 kt', temperature_error: '0.05 K (u)', hold: '60 s' },
  instruments: {
    airspeed: certified('indicator', { offset: 1 * KNOT, drift: 0 }),
    temperature: certified('thermometer', { resolution: 0.001, offset: 0.1 }),
    baro: certified('barometer', { offset: 30 }),
  },
  truth: { airspeed_loss: 2 * KNOT, start_ratio: 1.02, path_exponent: 1, every: 5 },
  noise: { noise: 0.05, temperature_noise: 0.002 },
  expected: ({ airspeed_loss = 0 }) => ({ airspeed_loss }),
}

export const coverage: Coverage = {
  setups: [
    staticLine,
    {
      ...staticLine,
      title: 'static line, logged four times a second',
      wide: { raw_rate: BENDS },
      readings: 'many',
      truth: { ...staticLine.truth, every: 0.25 },
    },
    pitotLine,
    {
      ...pitotLine,
      title: 'pitot line, logged four times a second',
      wide: { raw_rate: BENDS },
      readings: 'many',
      truth: { ...pitotLine.truth, every: 0.25 },
    },
  ],
}
