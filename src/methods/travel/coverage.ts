/** A pair of surfaces read with a level, and a rudder by its offset (invented). */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'

const DEG = Math.PI / 180

/** As they stand, in degrees, and what the drawing says. */
const TRUE = {
  up_left: 26.2,
  up_right: 24.6,
  down_left: -19.4,
  down_right: -18.6,
  neutral_left: 0.6,
  neutral_right: -0.2,
}

const ERRORS = {
  up_left: 26.2 - 25,
  up_right: 24.6 - 25,
  down_left: 19.4 - 20,
  down_right: 18.6 - 20,
  neutral_left: 0.6,
  neutral_right: -0.2,
}

/** ± 2° up; 1° beyond and 3° short down: the nearer end. */
const MARGINS = { up_left: 2 - 1.2, up_right: 2 - 0.4, down_left: 1 + 0.6, down_right: 3 - 1.4 }

const inRadians = (degrees: Readonly<Record<string, number>>, ending = ''): Record<string, number> =>
  Object.fromEntries(Object.entries(degrees).map(([name, value]) => [`${name}${ending}`, value * DEG]))

const sides = {
  ...inRadians(TRUE),
  ...inRadians(ERRORS, '_error'),
  ...inRadians(MARGINS, '_margin'),
  // The bare names are those of the worse side.
  ...inRadians({ up: 26.2, up_error: 1.2, up_margin: 0.8 }),
  ...inRadians({ up_asymmetry: 1.2 + 0.4, down_asymmetry: -0.6 + 1.4, asymmetry: 1.6 }),
  ...inRadians({ worst_margin: 0.8, neutral_offset: 0.6 }),
}

const level: CoverageSetup = {
  title: 'two sides by level, three readings each',
  readings: 'few',
  givens: { counted_from: 'zero', offset_as: 'chord' },
  fields: {
    positions: {
      up: { nominal: '25 deg', tolerance: '2 deg' },
      down: { nominal: '-20 deg', plus: '1 deg', minus: '3 deg' },
    },
  },
  instruments: {
    angle: certified('level', {
      resolution: 0.1 * DEG,
      gain: 0.002,
      offset: 0.1 * DEG,
      linearity: 0.03 * DEG,
    }),
  },
  truth: { sides: 2, repeats: 3, ...inRadians(TRUE) },
  noise: { noise: 0.15 * DEG },
  expected: () => sides,
}

/** One surface by its offset, with the force at the grip in neutral, both ways. */
const rudder: CoverageSetup = {
  ...level,
  title: 'a rudder by offset and force, four readings each',
  givens: { ...level.givens, radius: '0.4 m ± 0.003 m' },
  fields: {
    positions: {
      left: { nominal: '25 deg', tolerance: '2 deg' },
      right: { nominal: '-25 deg', tolerance: '2 deg' },
    },
  },
  instruments: {
    offset: certified('rule', { resolution: 0.001, offset: 0.0007, linearity: 0.0003 }),
    force: certified('puller', { resolution: 0.5, gain: 0.01, offset: 0.3 }),
  },
  truth: { repeats: 4, left: 25.8 * DEG, right: -24.5 * DEG, neutral: 0, friction: 9, centring: 1 },
  noise: { noise: 0.001, force_noise: 0.5 },
  expected: () => ({
    friction_force: 9,
    ...inRadians({
      left: 25.8,
      right: -24.5,
      left_error: 0.8,
      right_error: -0.5,
      left_margin: 1.2,
      right_margin: 1.5,
    }),
    ...inRadians({ asymmetry: 0.8 + 0.5, worst_margin: 1.2 }),
  }),
}

export const coverage: Coverage = {
  setups: [
    level,
    {
      ...level,
      title: 'two sides by level, ten readings each',
      readings: 'many',
      truth: { ...level.truth, repeats: 10 },
    },
    rudder,
    {
      ...rudder,
      title: 'a rudder by offset and force, twenty readings each',
      readings: 'many',
      truth: { ...rudder.truth, repeats: 20 },
    },
  ],
}
