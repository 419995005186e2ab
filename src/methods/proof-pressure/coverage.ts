/** A tank skin under 7 kPa (invented), read with dials of 0.01 mm. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'
import { gasEnergy, standoffDistance } from './energy.ts'

type Truth = Readonly<Record<string, number>>

const HELD =
  'counted from reading to reading, so never longer than the pressure was held; the uncertainty allows for a gap on both sides'

const TARGET = 7000
const DIGIT = 1e-5

const pressures = (truth: Truth, { numbers }: Givens): Truth => {
  const peak = (truth.peak_ratio ?? 1) * TARGET
  const energy = gasEnergy(peak, numbers.volume ?? Number.NaN)
  return {
    sustained_peak: peak,
    peak_ratio: truth.peak_ratio ?? 1,
    hold_time: truth.hold_time ?? 0,
    stored_energy: energy,
    standoff: standoffDistance('pcc2_501', energy),
  }
}

const skin: CoverageSetup = {
  title: 'two loadings, one reading at each step',
  readings: 'few',
  givens: { target: `${TARGET} Pa`, hold: '60 s', volume: '0.1 m^3 ± 0.002 m^3' },
  instruments: {
    pressure: certified('gauge', { resolution: 1, gain: 0.003, offset: 8, linearity: 3 }),
    station_1: certified('dial', { resolution: DIGIT / 4, gain: 1e-3, offset: 5e-6, linearity: DIGIT / 4 }),
  },
  truth: {
    peak_ratio: 1.05,
    hold_time: 120,
    bulge: 300 * DIGIT,
    set: 6 * DIGIT,
    creep: 4 * DIGIT,
    softening: 1.05,
  },
  noise: { noise: 0.6 * DIGIT, pressure_noise: 1 },
  expected: (truth, givens) => {
    const station = { set: truth.set ?? 0, creep: truth.creep ?? 0, softening: truth.softening ?? 1 }
    const named = Object.entries(station).map(([name, value]) => [`${name}_1`, value])
    return { ...pressures(truth, givens), ...station, ...Object.fromEntries(named) }
  },
  wide: { hold_time: HELD },
}

/** Half of the creep is in the mean of the hold, so bulge and compliance are asked of a skin that does not creep. */
const steady: CoverageSetup = {
  ...skin,
  title: 'one loading of a skin that does not creep, one reading at each step',
  truth: { ...skin.truth, creep: 0, softening: 1, loadings: 1, set: 0 },
  wide: {},
  expected: ({ bulge = 0 }) => ({
    bulge,
    bulge_1: bulge,
    compliance: bulge / TARGET,
    compliance_1: bulge / TARGET,
  }),
}

/** A second loading of the same skin, 5 % softer; it does not creep. */
const twice: CoverageSetup = {
  ...steady,
  title: 'two loadings of a skin that does not creep, one reading at each step',
  truth: { ...skin.truth, creep: 0, set: 0 },
  expected: ({ bulge = 0, softening = 1 }) => ({
    second_bulge: bulge * softening,
    second_bulge_1: bulge * softening,
  }),
}

const OFTEN = { repeats: 4, zeros: 10, interval: 2 }

export const coverage: Coverage = {
  setups: [
    skin,
    {
      ...skin,
      title: 'two loadings, four readings at each step, ten at zero, a hold read every 2 s',
      readings: 'many',
      truth: { ...skin.truth, ...OFTEN },
    },
    steady,
    {
      ...steady,
      title:
        'one loading of a skin that does not creep, four readings at each step, ten at zero, a hold read every 2 s',
      readings: 'many',
      truth: { ...steady.truth, ...OFTEN },
    },
    twice,
    {
      ...twice,
      title:
        'two loadings of a skin that does not creep, four readings at each step, ten at zero, a hold read every 2 s',
      readings: 'many',
      truth: { ...twice.truth, ...OFTEN },
    },
  ],
}
