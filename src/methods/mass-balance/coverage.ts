/** A control surface of 2 kg (invented) on one scale. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'

type Truth = Readonly<Record<string, number>>

const NOISE = 0.002
const DIGIT = 0.001

const expected = ({ unbalance = 0 }: Truth, { numbers }: Givens): Truth => {
  const { mass = 0, chord = 0, balance_arm: arm = 0 } = numbers
  return {
    unbalance,
    cg_arm: unbalance / mass,
    balance_ratio: unbalance / (mass * chord),
    weight_to_add: -unbalance / arm,
  }
}

const surface: CoverageSetup = {
  title: 'three readings',
  readings: 'few',
  givens: {
    mass: '2 kg ± 0.004 kg',
    chord: '0.25 m ± 0.002 m',
    balance_arm: '-0.08 m ± 0.001 m',
    tilt: '0.02 rad ± 0.02 rad',
    cg_height: '0.01 m ± 0.004 m',
  },
  instruments: {
    reading: certified('scale', { resolution: DIGIT, gain: 0.002, offset: 0.0005 }),
    arm: certified('tape', { resolution: 0.001, offset: 0.0005 }),
  },
  truth: { unbalance: 0.06, arm: 0.4003, repeats: 3 },
  noise: { noise: NOISE },
  expected,
  perfect: ['least_load'],
  narrow: {
    least_load:
      'three readings leave two degrees of freedom, and with so few the effective ones of a sum (Welch–Satterthwaite) come out a little too many',
  },
}

export const coverage: Coverage = {
  onlyMany: {
    repeatability:
      'the standard deviation of few readings is far from normal (JCGM 100, E.4.3): of three its interval holds the truth in 86 to 90 % only',
  },
  setups: [
    surface,
    {
      ...surface,
      title: 'forty readings',
      narrow: {},
      readings: 'many',
      truth: { ...surface.truth, repeats: 40 },
      // The digit makes scatter of its own, r²/12.
      expected: (truth, givens) => ({
        ...expected(truth, givens),
        repeatability: Math.hypot(NOISE, DIGIT / Math.sqrt(12)),
      }),
    },
  ],
}
