/** What a static-leak run is made of: givens, columns, measures. Handbook, form and sheet come from here. */
import type { CardField, ColumnField, Given, MeasureField, Schema } from '../method.ts'

const RULE = '14 CFR 23.1325(b)(2)(i), as before amendment 64'
const CIRCULAR = 'FAA AC 43.13-1B, paragraph 12-59'

const givens: readonly Given[] = [
  {
    name: 'side',
    kind: 'text',
    role: 'choice',
    required: true,
    choices: ['static', 'pitot'],
    meaning: 'which line is closed: static (drawn down below ambient) or pitot (blown up above it)',
  },
  {
    name: 'test_climb',
    kind: 'length',
    symbol: '\\Delta h_T',
    role: 'setpoint',
    required: false,
    range: { low: 1, high: 10_000 },
    meaning: 'height above that of the aircraft which the altimeter is drawn up to (1000 ft)',
    source: RULE,
  },
  {
    name: 'test_suction',
    kind: 'pressure',
    symbol: 's_T',
    role: 'setpoint',
    required: false,
    range: { low: 1, high: 80_000 },
    meaning: 'suction in the static line, positive below ambient (about 1 inHg), instead of `test_climb`',
    source: RULE,
  },
  {
    name: 'test_airspeed',
    kind: 'speed',
    symbol: 'V_T',
    role: 'setpoint',
    required: false,
    range: { low: 1, high: 340 },
    meaning: 'airspeed that the pitot line is blown up to (150 kt)',
    source: CIRCULAR,
  },
  {
    name: 'field_altitude',
    kind: 'length',
    symbol: 'h_0',
    role: 'known',
    required: false,
    range: { low: -500, high: 6000 },
    meaning: 'what the altimeter shows with the line open, on `altimeter_setting`; or read `baro`',
  },
  {
    name: 'altimeter_setting',
    kind: 'pressure',
    role: 'setpoint',
    required: false,
    default: '1013.25 hPa',
    range: { low: 80_000, high: 110_000 },
    meaning: 'pressure set on the altimeter, the same for all readings',
  },
  {
    name: 'temperature_error',
    kind: 'temperature-difference',
    symbol: 'u(\\Delta T)',
    role: 'setpoint',
    required: true,
    range: { low: 0, high: 100 },
    meaning:
      'standard uncertainty of the change of gas temperature in the line less that of the sensor over the hold. Where temperature is not measured: of the change of the gas temperature itself; 0.1 K is suggested for a minute in a closed hangar',
    source: 'common practice, no source',
  },
  {
    name: 'settle',
    kind: 'time',
    role: 'setpoint',
    required: false,
    default: '0 s',
    range: { low: 0 },
    meaning: 'time after the first reading that is left out, until pumping has stopped to warm or cool',
  },
  {
    name: 'hold',
    kind: 'time',
    role: 'setpoint',
    required: false,
    default: '60 s',
    range: { low: 1 },
    meaning: 'shortest time after the settle time that counts',
    source: RULE,
  },
]

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
  // Digits act over the fitted part only, which `sources.ts` knows.
  ramp: 'none',
  hold: false,
  instrument: 'required',
  ...more,
})

const columns: readonly ColumnField[] = [
  column('time', 'time', 'time of the reading', {
    required: true,
    unit: 's',
    instrument: 'none',
    symbol: 't',
  }),
  column('altitude', 'length', 'altitude that an altimeter on the static line shows', {
    hold: true,
    symbol: 'h',
    range: { low: -1000, high: 11_000 },
  }),
  column(
    'pressure',
    'pressure',
    'gauge pressure in the line: negative under suction, positive above ambient',
    {
      hold: true,
      symbol: 'p',
    },
  ),
  column('airspeed', 'speed', 'airspeed that an indicator on the pitot line shows, its static side open', {
    hold: true,
    symbol: 'V',
    range: { low: 0, high: 340 },
  }),
  column('temperature', 'temperature', 'temperature of the gas in the line, or beside the tube', {
    symbol: 'T',
    range: { low: 200, high: 400 },
  }),
  column('baro', 'pressure', 'station pressure, not reduced to sea level', {
    hold: true,
    symbol: 'b',
    range: { low: 30_000, high: 110_000 },
  }),
]

const measures: readonly MeasureField[] = [
  {
    name: 'altitude_loss',
    kind: 'length',
    symbol: '\\Delta h',
    positive: true,
    meaning:
      'loss of indicated altitude in the minute after the stated suction, changes of temperature taken out',
    source: RULE,
  },
  {
    name: 'airspeed_loss',
    kind: 'speed',
    symbol: '\\Delta V',
    positive: true,
    meaning:
      'loss of indicated airspeed in the minute after the stated airspeed, changes of temperature taken out',
    source: CIRCULAR,
  },
  {
    name: 'pressure_rate',
    kind: 'pressure-rate',
    symbol: '\\dot P^*',
    meaning: 'rate of the pressure in the line at the stated pressure, changes of temperature taken out',
  },
  { name: 'raw_rate', kind: 'pressure-rate', meaning: 'rate of the pressure in the line as read' },
  {
    name: 'temperature_part',
    kind: 'pressure-rate',
    meaning: 'rate that temperature alone explains',
    source: 'ideal gas at constant volume',
  },
  {
    name: 'start_ratio',
    kind: 'number',
    meaning: 'gauge pressure at the first fitted reading over the stated one',
  },
  {
    name: 'least_ratio',
    kind: 'number',
    meaning: 'gauge pressure where least was left in the hold over the stated one',
  },
  {
    name: 'halves',
    kind: 'pressure-rate',
    meaning: 'rate of the second half of the hold less that of the first',
  },
]

const temperatureField: CardField = {
  name: 'temperature',
  meaning: '`not measured` where no thermometer is read; its effect is then in the uncertainty',
  required: false,
  read: (raw) => {
    if (raw === 'not measured') return { ok: true, value: raw }
    const message = '`temperature` of a static-leak card can only say `not measured`'
    const expected = ['not measured']
    const end = typeof raw === 'string' ? raw.length : 0
    return {
      ok: false,
      error: [{ code: 'static-leak/temperature-field', message, start: 0, end, expected, path: [] }],
    }
  },
}

export const schema: Schema = {
  givens,
  columns,
  measures,
  cardFields: [temperatureField],
  alternatives: [
    {
      sets: [['altitude'], ['pressure'], ['airspeed']],
      say: 'what the line shows: `altitude` or `pressure` on the static side, `airspeed` or `pressure` on the pitot side',
    },
  ],
}
