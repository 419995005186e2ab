/**
 * The columns as the physics needs them: gauge pressure, ambient pressure and gas temperature at each row, whatever
 * was read. Slow errors that no column shows are added here, so that `sources.ts` can move them.
 */
import type { Columns, Givens } from '../method.ts'
import { altitudeAt, impactPressure, pressureAt, SEA_LEVEL_PRESSURE, SEA_LEVEL_TEMPERATURE } from './air.ts'

export type Span = { readonly start: number; readonly end: number }

/** Columns that show the line; the first that is there counts. */
export const LINE = ['altitude', 'pressure', 'airspeed'] as const

export const lineColumn = (columns: Columns): (typeof LINE)[number] | undefined =>
  LINE.find((name) => columns[name])

export const columnsUsed = (columns: Columns): string[] =>
  [lineColumn(columns), 'baro', 'temperature'].filter(
    (name): name is string => name !== undefined && columns[name] !== undefined,
  )

export type SlowShape = 'level' | 'change' | 'bend'

/** Name under which a slow error travels among the numbers of the givens. */
export const slowName = (of: string, shape: SlowShape): string => `slow error of ${of}, ${shape}`

/** A level, a change from end to end about the middle, and a bend that is highest in the middle. */
const slowError = (givens: Givens, of: string, span: Span): ((time: number) => number) => {
  const [level = 0, change = 0, bend = 0] = (['level', 'change', 'bend'] as const).map(
    (shape) => givens.numbers[slowName(of, shape)],
  )
  return (time) => {
    const x = (time - span.start) / (span.end - span.start)
    return level + change * (x - 0.5) + bend * (1 - Math.abs(2 * x - 1))
  }
}

/** What an altimeter adds to the pressure altitude: nothing on the standard setting. */
const settingAltitude = (givens: Givens): number =>
  altitudeAt(givens.numbers.altimeter_setting ?? SEA_LEVEL_PRESSURE)

/** Ambient pressure where no barometer is read: of the altimeter with the line open, else that of sea level. */
const openAmbient = (givens: Givens): number => {
  const { field_altitude } = givens.numbers
  return field_altitude === undefined
    ? SEA_LEVEL_PRESSURE
    : pressureAt(field_altitude + settingAltitude(givens))
}

/** Gauge pressure that the test asks for, at an ambient pressure; NaN where the card does not say it. */
export const testPressure = (givens: Givens, ambient: number): number => {
  const { test_climb, test_suction, test_airspeed } = givens.numbers
  if (givens.words.side === 'pitot')
    return test_airspeed === undefined ? Number.NaN : impactPressure(test_airspeed)
  if (test_suction !== undefined) return -test_suction
  return test_climb === undefined ? Number.NaN : pressureAt(altitudeAt(ambient) + test_climb) - ambient
}

export type Readings = {
  readonly time: (row: number) => number
  readonly gauge: (row: number) => number
  readonly ambient: (row: number) => number
  readonly temperature: (row: number) => number
}

export const readingsOf = (columns: Columns, givens: Givens, span: Span): Readings => {
  const times = columns.time?.values ?? new Float64Array(0)
  const time = (row: number) => times[row] as number
  const read = (name: string): ((row: number) => number) | undefined => {
    const values = columns[name]?.values
    if (!values) return undefined
    const error = slowError(givens, name, span)
    return (row) => (values[row] as number) + error(time(row))
  }
  const open = openAmbient(givens)
  const unread = slowError(givens, 'ambient', span)
  const ambient = read('baro') ?? ((row: number) => open + unread(time(row)))
  const altitude = read('altitude')
  const airspeed = read('airspeed')
  const pressure = read('pressure')
  const setting = settingAltitude(givens)
  const gauge = (row: number): number => {
    if (altitude) return pressureAt(altitude(row) + setting) - ambient(row)
    if (pressure) return pressure(row)
    return airspeed ? impactPressure(airspeed(row)) : Number.NaN
  }
  const sensor = read('temperature') ?? (() => SEA_LEVEL_TEMPERATURE)
  const gas = slowError(givens, 'gas', span)
  return { time, gauge, ambient, temperature: (row) => sensor(row) + gas(time(row)) }
}
