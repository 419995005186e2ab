/** A tank vent (invented): a third of the drop laminar at 10 L/min, a tenth more inwards. */
import { type Coverage, type CoverageSetup, certified } from '../coverage.ts'
import type { Givens } from '../method.ts'
import { requiredFlow } from './required.ts'

type Truth = Readonly<Record<string, number>>

const LITRE_PER_MINUTE = 1 / 60_000

/** Δp = a Q + b Q², and the ideal orifice that drops as much at the highest flow. */
const expected = (truth: Truth, givens: Givens): Truth => {
  const { laminar_coefficient: a = 0, turbulent_coefficient: b = 0, direction_ratio: ratio = 1 } = truth
  const highest = truth.highest_flow ?? 0
  const one = (way: 'in' | 'out') => {
    const factor = way === 'in' ? ratio : 1
    const drop = (flow: number) => factor * (a * flow + b * flow * flow)
    const required = requiredFlow(givens, way) ?? Number.NaN
    return {
      laminar_coefficient: factor * a,
      turbulent_coefficient: factor * b,
      required_flow: required,
      drop_at_required: drop(required),
      drop_at_no_flow: 0,
      highest_flow: highest,
      flow_reached: highest / required,
      effective_area: highest * Math.sqrt((givens.numbers.gas_density ?? 0) / (2 * drop(highest))),
    }
  }
  const named = (way: 'in' | 'out') =>
    Object.fromEntries(Object.entries(one(way)).map(([name, value]) => [`${name}_${way}`, value]))
  return { ...one('in'), ...named('in'), ...named('out'), direction_ratio: ratio }
}

const vent: CoverageSetup = {
  title: 'seven flows each way',
  readings: 'few',
  givens: {
    ullage: '100 L ± 0.6 L',
    altitude: '3000 m',
    descent_rate: '10.16 m/s',
    climb_rate: '7.62 m/s',
    gas_density: '1.2 kg/m^3 ± 0.02 kg/m^3',
  },
  instruments: {
    flow: certified('meter', {
      resolution: 0.01 * LITRE_PER_MINUTE,
      gain: 0.006,
      offset: 0.03 * LITRE_PER_MINUTE,
    }),
    pressure_drop: certified('gauge', { resolution: 0.5, gain: 0.004, offset: 1, linearity: 0.5 }),
  },
  truth: {
    laminar_coefficient: 5 / LITRE_PER_MINUTE,
    turbulent_coefficient: 1.4 / LITRE_PER_MINUTE ** 2,
    direction_ratio: 1.1,
    highest_flow: 10 * LITRE_PER_MINUTE,
    readings: 7,
  },
  noise: { noise: 1.5, flow_noise: 0 },
  expected,
}

export const coverage: Coverage = {
  setups: [
    vent,
    { ...vent, title: 'thirty flows each way', readings: 'many', truth: { ...vent.truth, readings: 30 } },
  ],
}
