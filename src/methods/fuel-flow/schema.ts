/** What a fuel-flow run is made of: columns and measures; the givens lie beside. */
import { KINDS } from '../../quantity/kinds.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { ColumnField, MeasureField, Schema } from '../method.ts'
import { givens, RULE } from './givens.ts'

const collected = { ramp: 'own', hold: false, required: false, instrument: 'required' } as const

const columns: readonly ColumnField[] = [
  {
    name: 'time',
    kind: 'time',
    unit: 's',
    symbol: 't',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'none',
    meaning: 'time since the cock was opened, or clock time',
  },
  { ...collected, name: 'volume', kind: 'volume', symbol: 'V', meaning: 'what has run into the can so far' },
  {
    ...collected,
    name: 'mass',
    kind: 'mass',
    symbol: 'm',
    meaning: 'what has run into the can so far, by scale',
  },
  {
    name: 'head',
    kind: 'length',
    symbol: 'h',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'required',
    meaning: 'level of the fuel in the tank above the inlet of the engine',
  },
  {
    name: 'event',
    kind: 'text',
    required: false,
    choices: ['first-sign'],
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning:
      'first-sign: the first sign of a failing flow (air, a falter); rows from there on are not fitted',
  },
]

const measures: readonly MeasureField[] = [
  {
    name: 'flow',
    kind: 'volume-flow',
    symbol: 'Q',
    positive: true,
    meaning: 'slope of what was collected over time, up to the first sign',
  },
  {
    name: 'mass_flow',
    kind: 'mass-flow',
    symbol: '\\dot m',
    positive: true,
    meaning: 'the same as a mass per time',
  },
  {
    name: 'required_flow',
    kind: 'volume-flow',
    symbol: 'Q_R',
    meaning: 'take-off consumption times the factor',
    source: RULE,
  },
  {
    name: 'flow_ratio',
    kind: 'number',
    symbol: 'Q/Q_R',
    meaning: 'flow over required flow, the factor in it: 1 is just enough',
  },
  {
    name: 'late_flow',
    kind: 'volume-flow',
    symbol: 'Q_2',
    positive: true,
    meaning: 'flow in the second half of the time, where the tank is lower',
  },
  {
    name: 'late_ratio',
    kind: 'number',
    symbol: 'Q_2/Q_R',
    meaning: 'flow in the second half over required flow',
  },
  {
    name: 'flow_change',
    kind: 'number',
    meaning: 'flow in the second half less that in the first, over the flow: negative where it falls off',
  },
  { name: 'lowest_head', kind: 'length', symbol: 'h_1', meaning: 'lowest head at which flow was read' },
  {
    name: 'head_margin',
    kind: 'length',
    meaning: 'least head less the lowest head: how far below the least-fuel state the test came',
  },
  { name: 'attitude_margin', kind: 'angle', meaning: 'attitude less the attitude that must be reached' },
  {
    name: 'unusable',
    kind: 'volume',
    symbol: 'V_U',
    positive: true,
    meaning: 'fuel left in the tank at the first sign of a failing flow',
    source: '14 CFR 23.959(a), as before amendment 64',
  },
]

const alternatives: Schema['alternatives'] = [
  { sets: [['volume'], ['mass']], say: 'what ran into the can is read as a `volume` or as a `mass`' },
]

export const schema: Schema = { givens, columns, measures, cardFields: [], alternatives }

/** Whether a given was written as a mass or a mass per time, where a volume is accepted as well. */
export const isKind = (dim: Dimension | undefined, kind: 'mass' | 'mass-flow'): boolean =>
  dim?.every((x, i) => x === KINDS[kind].dim[i]) ?? false
