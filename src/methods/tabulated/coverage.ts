/**
 * An engine run-up (invented): speed, oil temperature and fuel flow over time, each aggregate of the formulas once.
 * A single reading shows no scatter of its own and carries instrument and digit only; so the level that is read once is
 * a quiet one.
 */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'

const WARMING = 0.05

const runUp: CoverageSetup = {
  title: 'ten rows in ten minutes',
  readings: 'few',
  givens: { redline: '2400 rpm ± 10 rpm' },
  fields: {
    columns: {
      time: { unit: 's', meaning: 'clock', instrument: 'none' },
      rpm: { unit: 'rpm', meaning: 'engine speed' },
      oil: { unit: 'K', meaning: 'oil temperature' },
      fuel: { unit: 'L/h', meaning: 'fuel flow' },
      level: { unit: 'mm', meaning: 'oil level' },
    },
    measures: {
      speed: 'mean(rpm)',
      speed_margin: 'redline - mean(rpm)',
      first_level: 'first(level)',
      last_level: 'last(level)',
      highest_level: 'max(level)',
      lowest_level: 'min(level)',
      warming: 'slope(oil, time)',
      level_midway: 'at(level, time, 300 s)',
      burnt: 'integral(fuel, time)',
    },
  },
  instruments: {
    rpm: certified('tachometer', { resolution: 0.1, gain: 0.002, offset: 0.2 }),
    oil: certified('thermometer', { resolution: 0.1, gain: 0.001, offset: 0.5, drift: 0 }),
    level: certified('sight glass', { resolution: 0.001, gain: 0.002, offset: 0.0005 }),
    fuel: certified('flow meter', { resolution: 1e-9, gain: 0.005, offset: 1e-8 }),
  },
  truth: { rpm: 235, oil: 340, level: 0.1, fuel: 5e-6, span: 600, rows: 10, warming: WARMING },
  varies: { level: 0.005 },
  noise: { noise_rpm: 1, noise_oil: 0.4, noise_fuel: 5e-8 },
  expected: ({ level = 0 }, { numbers }) => ({
    speed: 235,
    speed_margin: (numbers.redline ?? 0) - 235,
    first_level: level,
    last_level: level,
    highest_level: level,
    lowest_level: level,
    level_midway: level,
    warming: WARMING,
    burnt: 5e-6 * 600,
  }),
}

export const coverage: Coverage = {
  setups: [
    runUp,
    {
      ...runUp,
      title: 'logged every second for ten minutes',
      readings: 'many',
      truth: { ...runUp.truth, rows: 601 },
    },
  ],
}
