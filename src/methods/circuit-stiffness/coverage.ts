/** A control circuit with play and friction (invented): pulled by hand at the surface, and logged; with stations. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'

type Truth = Readonly<Record<string, number>>

/** x = (M ∓ f)/K ± g/2: what the model of the circuit says of each measure. */
const expected = (truth: Truth, { numbers }: Givens): Truth => {
  const { stiffness = 0, free_play = 0, friction = 0 } = truth
  const moment = (numbers.limit_load ?? 0) * (numbers.arm ?? 1)
  const deflection = (moment - friction) / stiffness + free_play / 2
  return {
    stiffness,
    surface_stiffness: stiffness,
    stiffness_positive: stiffness,
    stiffness_negative: stiffness,
    compliance: 1 / stiffness,
    free_play,
    friction,
    hysteresis: (2 * friction) / stiffness,
    cycle_change: 0,
    deflection_at_limit: deflection,
    secant_at_limit: moment / deflection,
  }
}

const byHand: CoverageSetup = {
  title: 'force and length, two cycles of six steps',
  readings: 'few',
  givens: {
    loaded_end: 'surface',
    locked_at: 'stick, clamped',
    limit_load: '200 N',
    arm: '0.4 m ± 0.002 m',
    full_travel: '0.1 m ± 0.001 m',
  },
  instruments: {
    load: certified('cell', { resolution: 0.1, gain: 0.003, offset: 0.3, linearity: 0.2 }),
    deflection: certified('dial', { resolution: 1e-5, gain: 0.001, offset: 5e-6, linearity: 1e-5 }),
  },
  truth: { stiffness: 4000, free_play: 0.003, friction: 2 },
  noise: { noise: 5e-5 },
  expected,
  perfect: [
    'linear_stiffness',
    'travel_lost',
    'reached_positive',
    'reached_negative',
    'nonlinearity',
    'repeatability',
  ],
}

const SEGMENTS = { load_horn: 0.1, horn_bellcrank: 0.5, bellcrank_stick: 0.3, stick_fixture: 0.1 }

const stations: CoverageSetup = {
  title: 'moment and angle, three stations and the fixture read',
  readings: 'few',
  givens: {
    loaded_end: 'surface',
    locked_at: 'stick, clamped',
    limit_load: '60 N·m',
    ratio_horn: '1 ± 0.004',
    ratio_bellcrank: '0.8 ± 0.004',
    ratio_stick: '0.6 ± 0.004',
  },
  fields: { stations: ['horn', 'bellcrank', 'stick'] },
  instruments: {
    load: certified('torque', { resolution: 0.01, gain: 0.002, offset: 0.05, linearity: 0.05 }),
    ...Object.fromEntries(
      ['deflection', 'at_horn', 'at_bellcrank', 'at_stick', 'at_fixture'].map((name) => [
        name,
        certified(name, { resolution: 1e-4, gain: 0.001, offset: 1e-5, linearity: 2e-5 }),
      ]),
    ),
  },
  truth: {
    stiffness: 2000,
    friction: 1,
    free_play: 0.002,
    fixture_compliance: 5e-5,
    ...Object.fromEntries(Object.entries(SEGMENTS).map(([name, share]) => [`compliance_${name}`, share])),
  },
  noise: { noise: 1e-4 },
  expected: (truth) =>
    Object.fromEntries(
      Object.entries(SEGMENTS).flatMap(([name, share]) => [
        [`compliance_${name}`, share / (truth.stiffness ?? 0)],
        [`share_${name}`, share],
      ]),
    ),
}

export const coverage: Coverage = {
  setups: [
    byHand,
    {
      ...byHand,
      title: 'force and length logged, three cycles',
      readings: 'many',
      truth: { ...byHand.truth, steps: 80, cycles: 3 },
    },
    stations,
    {
      ...stations,
      title: 'moment and angle logged, three stations and the fixture read',
      readings: 'many',
      truth: { ...stations.truth, steps: 80, cycles: 3 },
    },
  ],
}
