/** What a proof-pressure run is made of: givens, columns, measures. */
import type { ColumnField, MeasureField, Schema } from '../method.ts'
import { givens } from './givens.ts'

const dial = { kind: 'length', required: false, ramp: 'own', hold: false } as const

export const columns: readonly ColumnField[] = [
  {
    name: 'time',
    kind: 'time',
    unit: 's',
    symbol: 't',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'none',
    meaning: 'clock time or time since the start',
  },
  {
    name: 'pressure',
    kind: 'pressure',
    symbol: 'p',
    required: true,
    ramp: 'own',
    hold: false,
    instrument: 'required',
    meaning: 'gauge pressure in the structure, negative below ambient',
  },
  {
    ...dial,
    name: 'station_<n>',
    symbol: 'x_n',
    instrument: 'required',
    meaning: 'dial on the skin (station_1, station_aft …), positive outwards',
  },
  {
    ...dial,
    name: 'base_<n>',
    symbol: 'b_n',
    instrument: 'optional',
    meaning:
      'movement of what dial n stands on, positive where it moves the dial as an outward bulge does (towards the skin): it is taken off',
  },
  {
    name: 'loading',
    kind: 'count',
    required: false,
    ramp: 'none',
    hold: false,
    instrument: 'none',
    range: { low: 1 },
    meaning: 'number of the loading, 1, 2 …; absent: from one return to zero to the next',
  },
]

const pressureMeasures: readonly MeasureField[] = [
  {
    name: 'sustained_peak',
    kind: 'pressure',
    symbol: 'p_s',
    meaning: 'highest pressure in the direction of the target that no reading fell below over the hold',
  },
  {
    name: 'peak_ratio',
    kind: 'number',
    symbol: 'p_s/p_T',
    meaning: 'sustained peak over the target',
  },
  {
    name: 'hold_time',
    kind: 'time',
    symbol: 't',
    meaning: 'first to last consecutive reading at which the pressure is at the target with 95 % confidence',
  },
  {
    name: 'stored_energy',
    kind: 'energy',
    symbol: 'E',
    positive: true,
    meaning:
      'energy of the gas by isentropic expansion, at the target or the highest reading, whichever is more',
    source: 'ASME PCC-2 article 5.1 (2008), appendix II; 501-II in later editions',
  },
  {
    name: 'standoff',
    kind: 'length',
    symbol: 'R',
    positive: true,
    meaning: "distance for blast, not for fragments, by the edition named; never less than the team's own",
    source: 'ASME PCC-2 article 5.1 (2008), appendix III; 501-III in later editions',
  },
]

export const stationMeasures: readonly MeasureField[] = [
  {
    name: 'bulge',
    kind: 'length',
    symbol: 'w',
    meaning:
      'movement of the skin at the target in the first loading that was held there, from its position before; of several stations the largest',
  },
  {
    name: 'second_bulge',
    kind: 'length',
    symbol: 'w_2',
    meaning:
      'movement of the skin at the target in the second loading, from its position before that one: what let go in the first shows here; of several stations the largest',
  },
  {
    name: 'compliance',
    kind: 'length-per-pressure',
    symbol: 'c',
    meaning: 'bulge over target; of several stations the largest',
  },
  {
    name: 'set',
    kind: 'length',
    symbol: 's',
    positive: true,
    meaning:
      'movement that stays after the pressure is off and the wait is over, in the direction of the bulge; of several stations the largest',
    source: '14 CFR 23.305(a), as before amendment 64: no detrimental permanent deformation at limit load',
  },
  {
    name: 'creep',
    kind: 'length',
    symbol: '\\Delta w_h',
    meaning:
      'movement during the hold at equal pressure, by a straight line; of several stations the largest',
  },
  {
    name: 'softening',
    kind: 'number',
    symbol: 'S',
    meaning:
      'step compliance in the second loading over that in the first between the same steps, where it rose most surely; 1 is unchanged; of several stations the largest',
  },
]

/** Without stations in sight: the general schema of the handbook. */
export const measuresFor = (suffixes: readonly string[]): readonly MeasureField[] => [
  ...pressureMeasures,
  ...stationMeasures,
  ...stationMeasures.flatMap((field) =>
    suffixes.map((suffix) => ({
      ...field,
      name: `${field.name}_${suffix}`,
      meaning: `${field.meaning.split('; of several')[0]}; at one station`,
    })),
  ),
]

export const schema: Schema = { givens, columns, measures: measuresFor(['<n>']), cardFields: [] }

/** The schema of one run: its stations by name. */
export const describe = (_: unknown, names: readonly string[]): Schema => {
  if (names.length === 0) return schema
  const named = (stem: string) => names.filter((name) => name.startsWith(stem))
  return {
    ...schema,
    columns: columns.flatMap((field) =>
      field.name.includes('<')
        ? named(field.name.replace('<n>', '')).map((name) => ({ ...field, name }))
        : [field],
    ),
    measures: measuresFor(named('station_').map((name) => name.replace('station_', ''))),
  }
}
