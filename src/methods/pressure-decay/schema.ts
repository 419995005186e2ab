/** What a pressure-decay run is made of: givens, columns, measures. Handbook, form and sheet come from here. */
import type { CardField, ColumnField, MeasureField, Schema } from '../method.ts'
import { givens } from './givens.ts'

// Resolution acts over the fitted part of the hold, which only the method knows: see `sources.ts`. Linearity
// does not act: the reading stays in a small part of the range. So `ramp` is `none` throughout.
const column = (
  name: string,
  kind: ColumnField['kind'],
  meaning: string,
  more: Partial<ColumnField>,
): ColumnField => ({
  name,
  kind,
  meaning,
  required: false,
  ramp: 'none',
  hold: false,
  instrument: 'required',
  ...more,
})

const atmospheric = { low: 30_000, high: 110_000 }

const columns: readonly ColumnField[] = [
  column('time', 'time', 'time of the reading', { required: true, instrument: 'none', symbol: 't' }),
  column('pressure', 'pressure', 'gauge pressure, negative below ambient', { hold: true, symbol: 'p' }),
  column('absolute_pressure', 'pressure', 'absolute pressure; needs baro', {
    hold: true,
    symbol: 'P',
    range: { low: 0 },
  }),
  column('vacuum', 'pressure', 'pressure below ambient, positive', { hold: true }),
  column('leg_article', 'length', 'level of the U-tube leg that is joined to the article', {
    source: 'p = ρ g (leg_open − leg_article)',
  }),
  column('leg_open', 'length', 'level of the U-tube leg that is open to the air', {
    source: 'p = ρ g (leg_open − leg_article)',
  }),
  // A thermometer's drift over the hold is part of temperature_error.
  column('temperature', 'temperature', 'temperature of the gas, or of the skin', {
    symbol: 'T',
    range: { low: 200, high: 400 },
  }),
  column('baro', 'pressure', 'station pressure, not reduced to sea level', {
    hold: true,
    symbol: 'b',
    range: atmospheric,
  }),
  column(
    'reference_pressure_reading',
    'pressure',
    'gauge pressure of a second closed, stiff volume known to be tight, lying beside the article: it then serves as thermometer of the gas',
    { hold: true, symbol: 'p_2' },
  ),
]

const measures: readonly MeasureField[] = [
  { name: 'mean_pressure', kind: 'pressure', symbol: '\\bar p', meaning: 'mean gauge pressure in the hold' },
  { name: 'pressure_at_start', kind: 'pressure', meaning: 'gauge pressure at the first fitted reading' },
  {
    name: 'pressure_least',
    kind: 'pressure',
    meaning: 'gauge pressure where least of the test pressure was left in the hold',
  },
  {
    name: 'pressure_rate',
    kind: 'pressure-rate',
    symbol: '\\dot P^*',
    meaning: 'rate of the compensated pressure',
    source: '40 CFR 1065.644, per volume',
  },
  { name: 'raw_rate', kind: 'pressure-rate', meaning: 'rate of the gauge pressure as read, not compensated' },
  {
    name: 'temperature_part',
    kind: 'pressure-rate',
    meaning: 'rate that temperature alone explains',
    source: 'ideal gas in these walls',
  },
  {
    name: 'leak_rate',
    kind: 'volume-flow',
    symbol: 'q_R',
    positive: true,
    meaning:
      'leak at the test pressure, as volume of air at reference conditions per time; positive when the test pressure is being lost',
  },
  {
    name: 'leak_throughput',
    kind: 'throughput',
    symbol: 'q',
    positive: true,
    meaning: 'the same leak as pressure · volume per time at the temperature of the gas',
    source: '40 CFR 1065.644',
  },
  {
    name: 'loss_fraction',
    kind: 'number',
    meaning: 'part of the gas that went out in the hold, or came in where the test is under vacuum',
    source: 'p V/T = const, absolute values',
  },
  {
    name: 'detectable_leak',
    kind: 'volume-flow',
    meaning: 'smallest leak that this run would have told from none, 5 % risk on either side',
    source: 'ISO 11843-1, with Student’s t for few readings',
  },
  {
    name: 'halves',
    kind: 'pressure-rate',
    meaning: 'rate of the second half of the hold less that of the first, at the test pressure',
  },
  {
    name: 'liquid_leak',
    kind: 'volume-flow',
    symbol: 'Q_L',
    positive: true,
    meaning: 'liquid through the same path, were it one laminar path',
    source: 'Hagen–Poiseuille for liquid and gas through one path',
  },
]

const temperatureField: CardField = {
  name: 'temperature',
  meaning: '`not measured` where no thermometer is read; its effect is then in the uncertainty',
  required: false,
  read: (raw) =>
    raw === 'not measured'
      ? { ok: true, value: raw }
      : {
          ok: false,
          error: [
            {
              code: 'pressure-decay/temperature-field',
              message: '`temperature` of a pressure-decay card can only say `not measured`',
              start: 0,
              end: typeof raw === 'string' ? raw.length : 0,
              expected: ['not measured'],
              path: [],
            },
          ],
        },
}

export const schema: Schema = {
  givens,
  columns,
  measures,
  cardFields: [temperatureField],
  alternatives: [
    {
      sets: [['pressure'], ['absolute_pressure', 'baro'], ['vacuum'], ['leg_article', 'leg_open']],
      say: 'the pressure in the article: `pressure`, or `absolute_pressure` with `baro`, or `vacuum`, or both legs of a U-tube (`leg_article` and `leg_open`)',
    },
  ],
}
