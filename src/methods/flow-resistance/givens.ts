/** What a card on a vent or line gives: what it must pass, and the gas it is tested with. */
import type { Given } from '../method.ts'

const rate = { role: 'setpoint', required: false, range: { low: 0 } } as const

export const givens: readonly Given[] = [
  {
    name: 'ullage',
    kind: 'volume',
    symbol: 'V',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'volume of the gas that breathes through the vent: the empty tank is the worst',
  },
  {
    ...rate,
    name: 'climb_rate',
    kind: 'speed',
    symbol: '\\dot h_c',
    meaning: 'fastest climb: gas goes out',
  },
  {
    ...rate,
    name: 'descent_rate',
    kind: 'speed',
    symbol: '\\dot h_d',
    meaning: 'fastest descent, an emergency descent included: air comes in',
  },
  {
    name: 'altitude',
    kind: 'length',
    symbol: 'h',
    role: 'setpoint',
    required: false,
    range: { low: -2000, high: 20_000 },
    meaning:
      'pressure altitude of that climb or descent; up to the tropopause the flow grows with it, so take the highest',
    source: 'U.S. Standard Atmosphere, 1976',
  },
  {
    ...rate,
    name: 'refuel_rate',
    kind: 'volume-flow',
    symbol: 'Q_r',
    meaning: 'flow of liquid into the tank, which drives as much gas out',
  },
  {
    ...rate,
    name: 'draw_rate',
    kind: 'volume-flow',
    symbol: 'Q_d',
    meaning: 'flow of liquid out of the tank, which draws as much air in; for a line, what it must pass',
  },
  {
    name: 'gas_density',
    kind: 'density',
    symbol: '\\rho',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning:
      'density of the gas or liquid in the test, at the orifice; without it no effective area is given',
  },
]
