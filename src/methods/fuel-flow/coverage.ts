/** A gravity feed of 19.5 kg/h (invented): what runs into a can on a scale, read by hand and logged. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'

type Truth = Readonly<Record<string, number>>

/** kg/s: 19.5 kg/h times 1.5. */
const ASKED = (1.5 * 19.5) / 3600
/** m³/s, a fifth more than that of fuel of 722 kg/m³. */
const FLOW = (1.2 * ASKED) / 722
const LEAST_HEAD = 0.4

const expected = ({ flow = 0, last_head = 0 }: Truth, { numbers }: Givens): Truth => {
  const { density = 0, attitude = 0 } = numbers
  const ratio = (flow * density) / ASKED
  return {
    flow,
    mass_flow: flow * density,
    required_flow: ASKED / density,
    flow_ratio: ratio,
    late_flow: flow,
    late_ratio: ratio,
    flow_change: 0,
    lowest_head: last_head,
    head_margin: LEAST_HEAD - last_head,
    attitude_margin: attitude - 0.26,
  }
}

const byHand: CoverageSetup = {
  title: 'seven readings of a scale in 100 s',
  readings: 'few',
  givens: {
    required: '19.5 kg/h',
    feed: 'gravity',
    density: '722 kg/m^3 ± 3 kg/m^3',
    time_error: '0.3 s',
    hold: '60 s',
    attitude: '0.29 rad ± 0.01 rad',
    least_attitude: '0.26 rad',
    least_head: `${LEAST_HEAD} m`,
  },
  instruments: {
    mass: certified('scale', { resolution: 0.001, gain: 0.001, offset: 0.005, linearity: 0.001 }),
    head: certified('rule', { resolution: 0.001, offset: 0.002 }),
  },
  truth: { flow: FLOW, lasts: 100, readings: 7, first_head: 0.4304, last_head: 0.3804 },
  noise: { noise: 0.003 },
  expected,
}

/** Until the first sign of a failing flow; what ran until then is a difference of two single readings. */
const unusable: CoverageSetup = {
  ...byHand,
  title: 'a tank run empty, eleven readings',
  givens: { ...byHand.givens, fuel_aboard: '4 L ± 0.02 L', time_error: '0 s' },
  truth: { ...byHand.truth, readings: 11, first_sign: 80 },
  noise: { noise: 0.0003 },
  expected: ({ flow = 0 }, { numbers }) => ({ unusable: (numbers.fuel_aboard ?? 0) - flow * 80 }),
}

const WIDENED =
  'a log is widened by what its neighbouring blocks look alike, and twenty blocks look a little alike by chance'

export const coverage: Coverage = {
  setups: [
    byHand,
    {
      ...byHand,
      title: 'a scale logged three times a second for 100 s',
      readings: 'many',
      truth: { ...byHand.truth, readings: 300 },
      wide: { flow_change: WIDENED },
    },
    unusable,
    {
      ...unusable,
      title: 'a tank run empty, logged three times a second',
      readings: 'many',
      truth: { ...unusable.truth, readings: 301 },
    },
  ],
}
