/**
 * The readings as the physics needs them: gauge pressure, ambient pressure and gas temperature at each row,
 * whatever was read. Slow errors that no column shows are added here, so that `sources.ts` can move them.
 */
import type { Columns, Givens } from '../method.ts'
import { pressureAtHeight, referenceTemperature, STANDARD_GRAVITY } from './constants.ts'

/** The part of the run that is fitted, in seconds of the time column. */
export type Span = { readonly start: number; readonly end: number }

export type Readings = {
  readonly time: (row: number) => number
  readonly gauge: (row: number) => number
  readonly ambient: (row: number) => number
  readonly temperature: (row: number) => number
}

export type SlowShape = 'level' | 'change' | 'bend'

/** Name under which a slow error travels among the numbers of the givens. */
export const slowName = (of: string, shape: SlowShape): string => `slow error of ${of}, ${shape}`

/**
 * A slow error over the hold: its level, its change from end to end (a ramp about the middle) and its bend (a
 * triangle that is highest in the middle: the two halves drift apart, the whole does not). Null where there is none.
 */
const slowError = (givens: Givens, of: string, span: Span): ((time: number) => number) | null => {
  const [level = 0, change = 0, bend = 0] = (['level', 'change', 'bend'] as const).map(
    (shape) => givens.numbers[slowName(of, shape)],
  )
  if (level === 0 && change === 0 && bend === 0) return null
  return (time) => {
    const x = (time - span.start) / (span.end - span.start)
    return level + change * (x - 0.5) + bend * (1 - Math.abs(2 * x - 1))
  }
}

const PRESSURES = ['pressure', 'absolute_pressure', 'vacuum', 'leg_article'] as const

/** Columns that this run's pressure and compensation are made from. */
export const columnsUsed = (columns: Columns): string[] => {
  const pressure = PRESSURES.find((name) => columns[name])
  const names = [pressure, pressure === 'leg_article' ? 'leg_open' : undefined]
  return [...names, 'baro', 'temperature', 'reference_pressure_reading'].filter(
    (name): name is string => name !== undefined && columns[name] !== undefined,
  )
}

/** Pressure of the air around: as read, else that of the standard atmosphere at the height of the place. */
export const nominalAmbient = (givens: Givens): number => pressureAtHeight(givens.numbers.elevation ?? 0)

export const readingsOf = (columns: Columns, givens: Givens, span: Span): Readings => {
  const times = columns.time?.values ?? new Float64Array(0)
  const time = (row: number) => times[row] as number
  const read = (name: string): ((row: number) => number) | undefined => {
    const values = columns[name]?.values
    if (!values) return undefined
    const error = slowError(givens, name, span)
    if (!error) return (row) => values[row] as number
    return (row) => (values[row] as number) + error(time(row))
  }

  const nominal = nominalAmbient(givens)
  const withoutBarometer = slowError(givens, 'ambient', span)
  const ambient = read('baro') ?? ((row: number) => nominal + (withoutBarometer?.(time(row)) ?? 0))

  const absolute = read('absolute_pressure')
  const vacuum = read('vacuum')
  const legArticle = read('leg_article')
  const legOpen = read('leg_open')
  const weight = (columns.leg_article?.density ?? columns.leg_open?.density ?? Number.NaN) * STANDARD_GRAVITY
  const gravity = 1 + (givens.numbers[slowName('gravity', 'level')] ?? 0)
  const gauge =
    read('pressure') ??
    (absolute
      ? (row: number) => absolute(row) - ambient(row)
      : vacuum
        ? (row: number) => -vacuum(row)
        : (row: number) =>
            weight * gravity * ((legOpen?.(row) ?? Number.NaN) - (legArticle?.(row) ?? Number.NaN)))

  const reference = referenceTemperature(givens)
  const sensor = read('temperature') ?? (() => reference)
  const gasLessSensor = slowError(givens, 'gas', span)
  const less = (row: number) => gasLessSensor?.(time(row)) ?? 0
  const second = read('reference_pressure_reading')
  if (!second) return { time, gauge, ambient, temperature: (row) => sensor(row) + less(row) }

  // A tight, stiff volume beside the article is a gas thermometer: T ∝ P₂. At equal pressures this is the
  // difference of the two gauges, and the barometer drops out.
  // Rows are those of the hold here, so the first is the first fitted reading.
  const scale = sensor(0) / (second(0) + ambient(0))
  const temperature = (row: number) => scale * (second(row) + ambient(row)) + less(row)
  return { time, gauge, ambient, temperature }
}
