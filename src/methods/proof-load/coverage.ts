/** A proof load of 500 N (invented): on a fitting without play, and on a circuit with play and friction. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'

type Truth = Readonly<Record<string, number>>

const TARGET = 500

const HELD =
  'counted from reading to reading, so never longer than the load was held; the uncertainty allows for a gap on both sides'

const load = (truth: Truth): Truth => ({
  sustained_peak: (truth.peak_ratio ?? 1) * TARGET,
  peak_ratio: truth.peak_ratio ?? 1,
  hold_time: truth.hold_time ?? 0,
})

/** Without play the movement is load over stiffness; the set is added to it. */
const moved = (truth: Truth): Truth => {
  const { stiffness_before: stiffness = 0, permanent_set: set = 0, peak_ratio: ratio = 1 } = truth
  const deflection = (ratio * TARGET) / stiffness + set
  return { peak_deflection: deflection, permanent_set: set, recovery: 1 - set / deflection }
}

const fitting: CoverageSetup = {
  title: 'zero readings before and after, a hold of six readings',
  readings: 'few',
  givens: { target: `${TARGET} N`, hold: '3 s', play: 'none' },
  instruments: {
    load: certified('cell', { resolution: 0.1, gain: 0.002, offset: 1, linearity: 0.5 }),
    deflection: certified('dial', { resolution: 1e-6, gain: 1e-3, offset: 5e-6, linearity: 3e-6 }),
  },
  truth: { peak_ratio: 1.05, hold_time: 6, permanent_set: 1e-4, stiffness_before: 50_000 },
  noise: { noise: 8e-6, load_noise: 0.2 },
  expected: (truth) => ({ ...load(truth), ...moved(truth) }),
  wide: { hold_time: HELD },
}

const circuit: CoverageSetup = {
  ...fitting,
  title: 'small cycles before and after, with play and friction',
  givens: { ...fitting.givens, play: 'present' },
  truth: { ...fitting.truth, free_play: 1e-3, friction: 20, small_load: 150 },
  expected: (truth) => ({
    ...load(truth),
    permanent_set: truth.permanent_set ?? 0,
    stiffness_before: truth.stiffness_before ?? 0,
    stiffness_after: truth.stiffness_before ?? 0,
    stiffness_change: 0,
  }),
}

/** The same with two stations: each under its own name. The bare names are those of the worse, here one as bad as the other. */
const atTwo = (setup: CoverageSetup): CoverageSetup => ({
  ...setup,
  title: `${setup.title}, two stations`,
  instruments: {
    ...(setup.instruments.load ? { load: setup.instruments.load } : {}),
    ...Object.fromEntries(
      ['station_root', 'station_tip'].map((id) => [
        id,
        { ...(setup.instruments.deflection ?? certified(id)), id },
      ]),
    ),
  },
  expected: (truth, givens) => {
    const shared = load(truth)
    const own = Object.entries(setup.expected(truth, givens)).filter(([name]) => shared[name] === undefined)
    return Object.fromEntries(
      own.flatMap(([name, value]) => ['root', 'tip'].map((station) => [`${name}_${station}`, value])),
    )
  },
  wide: {},
})

const setups: readonly CoverageSetup[] = [
  fitting,
  {
    ...fitting,
    title: 'zero readings, and a hold of 20 s logged ten times a second',
    readings: 'many',
    truth: { ...fitting.truth, interval: 0.1, hold_time: 20 },
  },
  circuit,
  {
    ...circuit,
    title: 'small cycles, and a hold of 20 s logged ten times a second',
    readings: 'many',
    truth: { ...circuit.truth, interval: 0.1, hold_time: 20 },
  },
]

export const coverage: Coverage = {
  setups: [...setups, ...setups.map(atTwo)],
  without: {
    peak_hold:
      'the reading of a peak-hold scale says that a load was touched, not that it was held; no pass rests on it',
  },
}
