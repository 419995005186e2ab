/** What the engine needs, how it is fed, and the state of the test. */
import type { Given } from '../method.ts'

export const RULE = '14 CFR 23.955, as before amendment 64'

const setpoint = { role: 'setpoint', required: false } as const
const known = { role: 'known', required: false } as const

export const givens: readonly Given[] = [
  {
    ...setpoint,
    name: 'required',
    kind: 'volume-flow',
    or: ['mass-flow'],
    symbol: 'Q_T',
    required: true,
    range: { low: 0 },
    meaning: 'fuel consumption of the engine at take-off power, without the factor',
  },
  {
    name: 'feed',
    kind: 'text',
    role: 'choice',
    required: true,
    choices: ['gravity', 'pump'],
    meaning: 'how the engine is fed; each pump is tested alone',
    source: `${RULE}: (b) gravity 150 %, (c) pump 125 % of the flow at take-off power`,
  },
  {
    ...setpoint,
    name: 'factor',
    kind: 'number',
    symbol: 'f',
    range: { low: 1, high: 5 },
    meaning: 'flow asked for over consumption; absent: 1.5 for gravity, 1.25 for a pump',
    source: RULE,
  },
  {
    ...known,
    name: 'density',
    kind: 'density',
    symbol: '\\rho',
    range: { low: 500, high: 1100 },
    meaning:
      'density of the fuel in the test, by hydrometer; needed where a mass is read and the consumption is a volume, or the other way round',
  },
  {
    ...setpoint,
    name: 'hold',
    kind: 'time',
    symbol: 't_h',
    range: { low: 0 },
    meaning: 'shortest time of flow that counts',
  },
  {
    ...setpoint,
    name: 'time_error',
    kind: 'time',
    symbol: 'u(t)',
    default: '0.3 s',
    range: { low: 0 },
    meaning:
      'standard uncertainty of the time from first to last reading: the hand on cock and stopwatch; 0 s for a logger',
    source: 'common practice, no source',
  },
  {
    ...known,
    name: 'attitude',
    kind: 'angle',
    symbol: '\\theta',
    range: { low: -1.2, high: 1.2 },
    meaning: 'attitude in the test, nose up positive',
  },
  {
    ...setpoint,
    name: 'least_attitude',
    kind: 'angle',
    range: { low: -1.2, high: 1.2 },
    meaning: 'attitude that must be reached, nose up positive: the most adverse one for the feed',
  },
  {
    ...setpoint,
    name: 'least_head',
    kind: 'length',
    symbol: 'h_0',
    range: { low: -10, high: 10 },
    meaning: 'head of fuel above the inlet at the least fuel: the test must come down to it',
    source: `${RULE}: fuel not more than unusable plus what the test needs (from memory for part 23)`,
  },
  {
    ...known,
    name: 'fuel_aboard',
    kind: 'volume',
    or: ['mass'],
    symbol: 'V_0',
    range: { low: 0 },
    meaning: 'fuel in the tank at the first reading, lines left out; needed for `unusable`',
  },
]
