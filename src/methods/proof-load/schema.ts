/** What a proof-load run is made of: givens, columns, measures. Handbook, form and sheet come from here. */
import type { CardField, ColumnField, Given, MeasureField, Schema } from '../method.ts'

const HOLD_RULE = '14 CFR 23.305(b), as before amendment 64: ultimate load without failure for at least 3 s'

export const givens: readonly Given[] = [
  {
    name: 'target',
    kind: 'force',
    or: ['moment'],
    symbol: 'F_T',
    role: 'setpoint',
    required: true,
    meaning: 'load to be reached and held; its sign is the direction of loading',
  },
  {
    name: 'hold',
    kind: 'time',
    symbol: 't_h',
    role: 'setpoint',
    required: false,
    default: '3 s',
    range: { low: 0 },
    meaning: 'shortest time at the target that counts',
    source: HOLD_RULE,
  },
  {
    name: 'tolerance',
    kind: 'number',
    symbol: '\\epsilon',
    role: 'setpoint',
    required: false,
    default: '0',
    range: { low: 0, high: 0.1 },
    meaning: 'part of the target by which a reading may fall short and still count as at the target',
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
    name: 'play',
    kind: 'text',
    role: 'choice',
    required: false,
    choices: ['none', 'present'],
    meaning:
      'whether the loaded system has play or friction, as a control circuit does: a mere zero reading then shows no set',
  },
]

const deflection = {
  kind: 'length',
  or: ['angle'],
  required: false,
  ramp: 'own',
  hold: false,
  instrument: 'required',
} as const

export const columns: readonly ColumnField[] = [
  {
    name: 'time',
    kind: 'time',
    symbol: 't',
    required: false,
    ramp: 'own',
    hold: false,
    instrument: 'none',
    meaning: 'clock time or time since the start',
  },
  {
    name: 'step',
    kind: 'count',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning: 'number of the load step, where no clock was read',
  },
  {
    name: 'held',
    kind: 'time',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    range: { low: 0 },
    meaning: 'how long the load of this step was held, by stopwatch',
  },
  {
    name: 'load',
    kind: 'force',
    or: ['moment'],
    symbol: 'F',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    meaning: 'applied load as read, signed as the target is',
  },
  { ...deflection, name: 'deflection', symbol: 'x', meaning: 'movement under the load, signed' },
  {
    ...deflection,
    name: 'station_<n>',
    symbol: 'x_n',
    meaning: 'movement at a further station (station_1, station_tip …), signed',
  },
  {
    name: 'phase',
    kind: 'text',
    required: false,
    choices: ['before', 'zero', 'loading', 'hold', 'unloading', 'after', 'peak'],
    ramp: 'none',
    hold: false,
    instrument: 'none',
    meaning:
      'what the row is: before and after mark the small cycles (or zero readings) around the proof load, peak the reading of a peak-hold scale; the others are said for the reader',
  },
]

const load = { kind: 'force', or: ['moment'] } as const
const movement = { kind: 'length', or: ['angle'] } as const
const stiffness = { kind: 'linear-stiffness', or: ['angular-stiffness'], symbol: 'k' } as const

/** Once for the run. */
export const loadMeasures: readonly MeasureField[] = [
  {
    ...load,
    name: 'sustained_peak',
    symbol: 'F_s',
    meaning: 'highest load in the direction of the target that no reading fell below over the hold',
  },
  {
    kind: 'number',
    name: 'peak_ratio',
    symbol: 'F_s/F_T',
    meaning: 'sustained peak over the target',
  },
  {
    kind: 'time',
    name: 'hold_time',
    symbol: 't',
    meaning:
      'first to last consecutive reading that is at the target (less the tolerance) with 95 % confidence',
  },
  {
    ...load,
    name: 'peak_hold',
    meaning:
      'reading of a peak-hold scale: the load was touched, nothing says for how long; no point of a curve',
  },
]

/** Once for every column of movement; with several the bare name is that of the worst. */
export const stationMeasures: readonly MeasureField[] = [
  {
    ...movement,
    name: 'peak_deflection',
    symbol: 'x_s',
    meaning: 'movement at the sustained peak, from the readings before it; of several stations the largest',
  },
  {
    ...movement,
    name: 'permanent_set',
    symbol: 's',
    positive: true,
    meaning:
      'movement that stays after the load, in the direction of the load: shift of the middle of the play where cycles in both directions were read, else shift of the zero reading at equal load; of several stations the largest',
    source: '14 CFR 23.305(a), as before amendment 64: no detrimental permanent deformation at limit load',
  },
  {
    kind: 'number',
    name: 'recovery',
    symbol: 'R',
    meaning: 'part of the movement that went back, 1 − set/movement; of several stations the smallest',
  },
  { ...stiffness, name: 'stiffness_before', meaning: 'load per movement in the loading before' },
  { ...stiffness, name: 'stiffness_after', meaning: 'load per movement in the loading after' },
  {
    kind: 'number',
    name: 'stiffness_change',
    symbol: '\\Delta k/k',
    meaning:
      'stiffness after over stiffness before, less 1, over the same range of load; only where two loadings were read; of several stations the lowest',
  },
]

const perStation = stationMeasures.map((field) => ({
  ...field,
  name: `${field.name}_<station>`,
  meaning: `${field.meaning.split(';')[0]}; at one station`,
}))

export const cardFields: readonly CardField[] = [
  {
    name: 'scale',
    meaning:
      '`peak-hold` where the scale shows only the highest load: its readings are then no points of a curve',
    required: false,
    read: (raw) => {
      if (raw === 'live' || raw === 'peak-hold') return { ok: true, value: raw }
      const message = '`scale` says how the load is read'
      const expected = ['live', 'peak-hold']
      return {
        ok: false,
        error: [{ code: 'proof-load/scale', message, start: 0, end: String(raw).length, expected, path: [] }],
      }
    },
  },
]

export const alternatives: Schema['alternatives'] = [
  {
    sets: [['time'], ['step']],
    say: 'a load is held for a time: give `time`, or `step` and how long each was `held`',
  },
]

export const schema: Schema = {
  givens,
  columns,
  measures: [...loadMeasures, ...stationMeasures, ...perStation],
  cardFields,
  alternatives,
}
