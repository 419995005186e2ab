/** What the columns and givens of a run must have between them before anything is computed. */
import type { Columns, Givens, Method } from '../method.ts'
import { pressureAtHeight } from './constants.ts'
import { readingsOf } from './readings.ts'

type Finding = ReturnType<NonNullable<Method['validate']>>[number]

/** Weather keeps the air pressure within this of the standard at that height, Pa: 870 to 1085 hPa at the sea. */
const WEATHER = { below: 14_500, above: 7_500 }

const ofColumns = (columns: Columns, givens: Givens): Finding[] => {
  const kinds = ['pressure', 'absolute_pressure', 'vacuum', 'leg_article'].filter((name) => columns[name])
  const [, second] = kinds
  const findings: Finding[] = []
  if (second) {
    findings.push({
      code: 'pressure-decay/two-pressures',
      column: second,
      message: `The pressure of the article is there twice: \`${kinds.join('` and `')}\``,
      hint: 'keep the one that the verdict is to rest on; say of the other in `remark` or in the prose',
    })
  }
  if (columns.leg_article && !(columns.leg_article.density ?? columns.leg_open?.density)) {
    findings.push({
      code: 'pressure-decay/no-density',
      column: 'leg_article',
      message: 'The U-tube has no density of its liquid, so its legs give no pressure',
      hint: 'add `liquid` and `density` to the instrument',
    })
  }
  const thermometer = columns.temperature ?? columns.reference_pressure_reading
  if (!thermometer && givens.fields.temperature === undefined) {
    findings.push({
      code: 'pressure-decay/no-temperature',
      message: 'The readings have no `temperature`',
      why: 'near room temperature and one atmosphere, 1 K of the gas is about 340 to 350 Pa: more than most leaks',
      hint: 'add the column, or write `temperature: not measured` on the card and give the uncertainty of the change of the gas temperature itself as `temperature_error`',
    })
  }
  if (!columns.baro && !columns.absolute_pressure) {
    findings.push({
      code: 'pressure-decay/no-barometer',
      severity: 'warning',
      message: 'No `baro` was read: a change of the weather counts as 25 Pa + 40 Pa/h, at most 700 Pa',
      why: 'a gauge reads against the air of the moment',
      hint: 'read the barometer (station pressure) with each reading',
    })
  }
  return findings
}

const ofBarometer = (columns: Columns, givens: Givens): Finding[] => {
  const height = givens.numbers.elevation
  const baro = columns.baro?.values
  if (height === undefined || !baro) return []
  const expected = pressureAtHeight(height)
  const row = baro.findIndex((value) => value > expected + WEATHER.above || value < expected - WEATHER.below)
  if (row < 0) return []
  const hectopascals = (value: number) => `${Math.round(value / 100)} hPa`
  return [
    {
      code: 'pressure-decay/reduced-barometer',
      column: 'baro',
      row,
      message: `${hectopascals(baro[row] as number)} cannot be the station pressure at ${Math.round(height)} m`,
      why: `the air there has about ${hectopascals(expected)}; weather reports reduce the pressure to sea level`,
      hint: 'read a barometer in the hangar, or take the unreduced station pressure (QFE)',
    },
  ]
}

const ofGivens = (givens: Givens): Finding[] => {
  const { numbers, words } = givens
  const walls = numbers.volume_compliance !== undefined || words.rigid !== undefined
  const syringe = numbers.syringe_volume !== undefined && numbers.syringe_step !== undefined
  const known = [numbers.volume !== undefined, walls, syringe].filter(Boolean).length
  const findings: Finding[] = []
  if (numbers.test_pressure === 0) {
    findings.push({
      code: 'pressure-decay/no-test-pressure',
      given: 'test_pressure',
      message: 'A test pressure of zero tests nothing',
      hint: 'negative below ambient, positive above',
    })
  }
  if (known < 2) {
    const lacking = numbers.volume === undefined ? 'volume' : 'volume_compliance'
    findings.push({
      code: 'pressure-decay/volume-unknown',
      given: lacking,
      message: `\`${lacking}\` is missing`,
      why: 'the same leak moves the pressure of a small or stiff volume more than that of a large or soft one',
      hint: 'give `volume` and `volume_compliance` (or `rigid: because …`), or one of them and a syringe step (`syringe_volume`, `syringe_step`)',
    })
  }
  return findings
}

const ofTime = (columns: Columns): Finding[] => {
  const time = columns.time?.values ?? new Float64Array(0)
  let last = Number.NEGATIVE_INFINITY
  for (let row = 0; row < time.length; row += 1) {
    const t = time[row] as number
    // Two rows of one time are kept: many a logger writes whole seconds, whatever its rate.
    if (t < last) {
      return [
        {
          code: 'pressure-decay/time-order',
          column: 'time',
          row,
          message: 'The time goes back from the row before',
          hint: 'rows stay in the order they were read; a clock that was set anew needs a new run',
        },
      ]
    }
    if (Number.isFinite(t)) last = t
  }
  return []
}

/** A pressure on the other side of ambient is a lost minus sign, or a gauge taken for an absolute one. */
const ofSide = (columns: Columns, givens: Givens): Finding[] => {
  const testPressure = givens.numbers.test_pressure ?? 0
  const name = ['pressure', 'absolute_pressure', 'vacuum', 'leg_article'].find((each) => columns[each])
  const rows = columns.time?.values.length ?? 0
  if (!name || testPressure === 0 || rows === 0) return []
  const { gauge } = readingsOf(columns, givens, { start: 0, end: 1 })
  let sum = 0
  for (let row = 0; row < rows; row += 1) sum += Number.isFinite(gauge(row)) ? gauge(row) : 0
  if (!(sum * testPressure < 0)) return []
  const [asked, read] = testPressure < 0 ? ['below', 'above'] : ['above', 'below']
  return [
    {
      code: 'pressure-decay/other-side',
      column: name,
      message: `The test pressure is ${asked} ambient, the readings are ${read} it`,
      why: 'the sign is part of the pressure: negative below ambient',
      hint: 'write the minus sign, or name the column `vacuum` where the gauge counts downwards from ambient',
    },
  ]
}

export const validate = (columns: Columns, givens: Givens): readonly Finding[] => [
  ...ofColumns(columns, givens),
  ...ofBarometer(columns, givens),
  ...ofGivens(givens),
  ...ofTime(columns),
  ...ofSide(columns, givens),
]
