/** What the columns and givens of a run must have between them before anything is computed. */
import type { Columns, Givens, Method } from '../method.ts'
import { LINE, readingsOf } from './readings.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

const ofColumns = (columns: Columns, givens: Givens): Finding[] => {
  const [first, second] = LINE.filter((name) => columns[name])
  const wrong = givens.words.side === 'pitot' ? 'altitude' : 'airspeed'
  const findings: Finding[] = []
  if (first && second)
    findings.push({
      code: 'static-leak/two-indicators',
      column: second,
      message: `The line is read twice: \`${first}\` and \`${second}\``,
      hint: 'keep the one that the verdict is to rest on; say of the other in `remark` or in the prose',
    })
  else if (columns[wrong])
    findings.push({
      code: 'static-leak/other-line',
      column: wrong,
      message: `\`${wrong}\` does not belong to the ${givens.words.side ?? 'static'} line`,
      why: 'an altimeter is on the static line, an airspeed indicator with its static side open is on the pitot line',
      hint: 'mend `side` on the card, or name the column for what was read',
    })
  if (!columns.temperature && givens.fields.temperature === undefined)
    findings.push({
      code: 'static-leak/no-temperature',
      message: 'The readings have no `temperature`',
      why: '1 K of the gas in the line is as much as 96 ft, nearly all that the rule allows in a minute',
      hint: 'add the column, or write `temperature: not measured` on the card and give the uncertainty of the change of the gas temperature itself as `temperature_error`',
    })
  return findings
}

const ofGivens = (columns: Columns, givens: Givens): Finding[] => {
  const { test_climb, test_suction, test_airspeed, field_altitude } = givens.numbers
  const pitot = givens.words.side === 'pitot'
  const stated = pitot ? [test_airspeed] : [test_climb, test_suction].filter((each) => each !== undefined)
  const findings: Finding[] = []
  if (stated.length !== 1 || stated[0] === undefined) {
    const names = pitot ? '`test_airspeed`' : 'one of `test_climb` and `test_suction`'
    findings.push({
      code: 'static-leak/no-test-pressure',
      given: pitot ? 'test_airspeed' : 'test_climb',
      message: `The ${pitot ? 'pitot' : 'static'} line needs ${names}${stated.length > 1 ? ', not both' : ''}`,
      why: '1 inHg and 1000 ft are not the same: near the sea 1 inHg is 938 ft',
      hint: pitot ? 'as in `test_airspeed: 150 kt`' : 'as in `test_climb: 1000 ft` or `test_suction: 1 inHg`',
    })
  }
  if (!pitot && field_altitude === undefined && !columns.baro)
    findings.push({
      code: 'static-leak/no-ambient',
      given: 'field_altitude',
      message: 'Nothing says what the pressure of the air around is',
      why: 'suction counts from it, and a foot is fewer pascals the higher the place',
      hint: 'give `field_altitude` (the altimeter with the line open), or read `baro`',
    })
  return findings
}

const ofTime = (columns: Columns): Finding[] => {
  const time = columns.time?.values ?? new Float64Array(0)
  const row = time.findIndex((t, k) => k > 0 && t <= (time[k - 1] as number))
  if (row < 0) return []
  return [
    {
      code: 'static-leak/time-order',
      column: 'time',
      row,
      message: 'The time does not go on from the row before',
      hint: 'rows stay in the order they were read; a clock that was set anew needs a new run',
    },
  ]
}

/** A gauge pressure on the other side of ambient is a lost minus sign. */
const ofSide = (columns: Columns, givens: Givens): Finding[] => {
  const rows = columns.time?.values.length ?? 0
  if (!columns.pressure || rows === 0) return []
  const { gauge } = readingsOf(columns, givens, { start: 0, end: 1 })
  const values = Array.from({ length: rows }, (_, row) => gauge(row)).filter(Number.isFinite)
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const asked = givens.words.side === 'pitot' ? 1 : -1
  if (!(mean * asked < 0)) return []
  const [side, read] = asked < 0 ? ['static', 'above'] : ['pitot', 'below']
  return [
    {
      code: 'static-leak/other-side',
      column: 'pressure',
      message: `The ${side} line is tested ${asked < 0 ? 'below' : 'above'} ambient, the readings are ${read} it`,
      why: 'the sign is part of the pressure: negative below ambient',
      hint: 'write the minus sign, or mend `side` on the card',
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...ofColumns(columns, givens),
  ...ofGivens(columns, givens),
  ...ofTime(columns),
  ...ofSide(columns, givens),
]
