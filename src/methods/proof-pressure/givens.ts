/** What a card on a pressurised structure gives. */
import type { Given } from '../method.ts'
import { EDITIONS } from './energy.ts'

export const givens: readonly Given[] = [
  {
    name: 'target',
    kind: 'pressure',
    symbol: 'p_T',
    role: 'setpoint',
    required: false,
    meaning:
      'gauge pressure to be reached and held, negative below ambient; as a target of the card, or left out where density, load_factor and column give it',
  },
  {
    name: 'density',
    kind: 'density',
    symbol: '\\rho',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'density of the liquid whose weight the structure carries in flight',
  },
  {
    name: 'load_factor',
    kind: 'number',
    symbol: 'n',
    role: 'setpoint',
    required: false,
    range: { low: 0 },
    meaning:
      'load factor normal to the surface of the liquid, 1 at rest; say in the card whether limit or ultimate',
  },
  {
    name: 'column',
    kind: 'length',
    symbol: 'h',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'height of the liquid above the place that is tested, along the acceleration',
  },
  {
    name: 'vent_pressure',
    kind: 'pressure',
    symbol: 'p_v',
    role: 'known',
    required: false,
    meaning: 'pressure that the vent adds over the liquid',
  },
  {
    name: 'hold',
    kind: 'time',
    symbol: 't_h',
    role: 'setpoint',
    required: true,
    range: { low: 0 },
    meaning: 'shortest time at the target that counts',
  },
  {
    name: 'max_gap',
    kind: 'time',
    role: 'setpoint',
    required: false,
    range: { low: 0 },
    meaning: 'longest time between two readings of one hold; longer, and the hold is broken; absent: any',
  },
  {
    name: 'wait',
    kind: 'time',
    symbol: 't_w',
    role: 'setpoint',
    required: false,
    default: '0 s',
    range: { low: 0 },
    meaning: 'time after the pressure is off before readings count for the set: skins creep back',
  },
  {
    name: 'volume',
    kind: 'volume',
    symbol: 'V',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning:
      'volume of the gas under pressure, hoses included: with liquid inside only what is left above it',
  },
  {
    name: 'edition',
    kind: 'text',
    role: 'choice',
    required: false,
    choices: EDITIONS,
    default: 'pcc2_501',
    meaning:
      'whose stand-off distance: pcc2_2008 (article 5.1, mass of TNT) or pcc2_501 (later editions, article 501, twice the mass)',
    source: 'ASME PCC-2, appendices II and III of the article on pressure and tightness testing',
  },
  {
    name: 'own_distance',
    kind: 'length',
    role: 'setpoint',
    required: false,
    range: { low: 0 },
    meaning: "the team's own stand-off distance; the computed one is never shown below it",
  },
]
