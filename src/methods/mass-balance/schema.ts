/** What a mass-balance run is made of. Aft of the hinge line is positive. */
import type { ColumnField, Given, MeasureField, Schema } from '../method.ts'

const givens: readonly Given[] = [
  {
    name: 'mass',
    kind: 'mass',
    symbol: 'm',
    role: 'known',
    required: true,
    range: { low: 0 },
    meaning: 'mass of the whole surface as balanced',
  },
  {
    name: 'chord',
    kind: 'length',
    symbol: 'c',
    role: 'known',
    required: false,
    range: { low: 0 },
    meaning: 'mean chord aft of the hinge line; needed for `balance_ratio`',
  },
  {
    name: 'balance_arm',
    kind: 'length',
    symbol: 'x_b',
    role: 'known',
    required: false,
    meaning:
      'arm of the balance weight from the hinge line, negative ahead of it; needed for `weight_to_add`',
  },
  {
    name: 'tilt',
    kind: 'angle',
    symbol: '\\theta',
    role: 'known',
    required: false,
    range: { low: -0.5, high: 0.5 },
    meaning: 'how far the chord line is off level, leading edge up positive',
  },
  {
    name: 'cg_height',
    kind: 'length',
    symbol: 'h',
    role: 'known',
    required: false,
    meaning: 'height of the centre of gravity above the hinge line; counts where it is not level',
  },
]

const mass = { kind: 'mass', hold: false } as const

const columns: readonly ColumnField[] = [
  {
    name: 'point',
    kind: 'text',
    required: true,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning:
      'where a scale carries the surface; rows of one name are repeats, points of different names carry at the same time',
  },
  {
    ...mass,
    name: 'reading',
    symbol: 'r',
    required: true,
    ramp: 'own',
    instrument: 'required',
    meaning: 'what the scale shows',
  },
  {
    name: 'arm',
    kind: 'length',
    symbol: 'x',
    required: true,
    ramp: 'none',
    hold: false,
    instrument: 'required',
    meaning: 'level distance of the point from the hinge line, positive aft, 0 for a scale under a hinge',
  },
  {
    ...mass,
    name: 'tare',
    symbol: 't',
    required: false,
    ramp: 'none',
    instrument: 'optional',
    meaning:
      'stand or support on the scale, or a test weight laid on the surface right over the point, to be subtracted',
  },
]

const measures: readonly MeasureField[] = [
  {
    name: 'unbalance',
    kind: 'mass-moment',
    symbol: 'S',
    meaning: 'mass times arm of the centre of gravity aft of the hinge; positive: tail-heavy',
  },
  {
    name: 'cg_arm',
    kind: 'length',
    symbol: 'x_{CG}',
    meaning: 'centre of gravity aft of the hinge line: unbalance over mass',
  },
  {
    name: 'balance_ratio',
    kind: 'number',
    symbol: 'S/(m c)',
    meaning: 'unbalance over mass times chord: 0 is in balance, negative nose-heavy',
  },
  {
    name: 'weight_to_add',
    kind: 'mass',
    symbol: 'm_b',
    meaning: 'mass at `balance_arm` that brings the unbalance to zero; negative: to be taken off there',
  },
  {
    name: 'least_load',
    kind: 'mass',
    symbol: 'r_0',
    meaning:
      'what the lightest loaded scale carries, test weight included: it must be pressed for the reading to count',
  },
  {
    name: 'repeatability',
    kind: 'mass',
    symbol: 's',
    meaning: 'standard deviation of single readings at one point',
  },
]

export const schema: Schema = { givens, columns, measures, cardFields: [] }
