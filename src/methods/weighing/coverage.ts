/** A light aircraft on two scales that change places, fuel taken out by calculation (invented). */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'

type Truth = Readonly<Record<string, number>>

const DIGIT = 0.1
const NOISE = 0.15

/** Limits of the envelope at 450 kg, half way between its corners: 1.375 m and 1.65 m. */
const expected = ({ weight = 0, cg = 0 }: Truth, { numbers }: Givens): Truth => ({
  weight,
  cg,
  moment: weight * cg,
  cg_mac: (cg - (numbers.mac_leading_edge ?? 0)) / (numbers.mac ?? 1),
  cg_forward_margin: cg - 1.375,
  cg_aft_margin: 1.65 - cg,
  weight_margin: 600 - weight,
})

const twoScales: CoverageSetup = {
  title: 'two scales, three readings of each point',
  readings: 'few',
  givens: {
    datum: 'front face of the firewall',
    pitch: '0.004 rad ± 0.004 rad',
    cg_height: '0.8 m ± 0.1 m',
    arm_left: '1.8 m ± 0.004 m',
    arm_right: '1.8 m ± 0.004 m',
    arm_nose: '0.4 m ± 0.004 m',
    arm_fuel: '1.7 m ± 0.02 m',
    volume_fuel: '0.08 m^3 ± 0.0008 m^3',
    density_fuel: '720 kg/m^3 ± 4 kg/m^3',
    mac: '1.2 m ± 0.004 m',
    mac_leading_edge: '1.3 m ± 0.004 m',
    side_left: '-1 m ± 0.004 m',
    side_right: '1 m ± 0.004 m',
    side_nose: '0 m ± 0.004 m',
    side_fuel: '0 m ± 0.004 m',
    roll: '0 rad ± 0.004 rad',
    latitude: '0.82 rad',
    scale_latitude: '0.66 rad',
  },
  fields: {
    points: ['left', 'right', 'nose'],
    items: ['fuel'],
    envelope: [
      ['300 kg', '1.30 m'],
      ['600 kg', '1.45 m'],
      ['600 kg', '1.65 m'],
      ['300 kg', '1.65 m'],
    ],
  },
  instruments: {
    reading_a: certified('a', { resolution: DIGIT, gain: 0.0005, offset: 0.15 }),
    reading_b: certified('b', { resolution: DIGIT, gain: 0.0005, offset: 0.15 }),
  },
  truth: { weight: 450, cg: 1.5, repeats: 3, remove_fuel: 1 },
  noise: { noise: NOISE },
  expected,
  perfect: ['cg_lateral', 'weight_as_weighed', 'cg_as_weighed', 'at_left', 'at_right', 'at_nose'],
}

export const coverage: Coverage = {
  onlyMany: {
    repeatability:
      'the standard deviation of few readings is far from normal (JCGM 100, E.4.3): of three its interval holds the truth in 86 to 90 % only',
  },
  setups: [
    twoScales,
    {
      ...twoScales,
      title: 'two scales, twenty readings of each point',
      readings: 'many',
      truth: { ...twoScales.truth, repeats: 20 },
      // The digit makes scatter of its own, r²/12.
      expected: (truth, givens) => ({
        ...expected(truth, givens),
        repeatability: Math.hypot(NOISE, DIGIT / Math.sqrt(12)),
      }),
    },
  ],
  without: {
    scale_difference:
      'the widest of several differences, so it is beyond its own interval more often than once in twenty; the warning that rests on it allows for that (Bonferroni)',
  },
}
