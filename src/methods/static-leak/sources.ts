/**
 * Sources of uncertainty that only this method knows: the slow errors over the hold. Each error that may grow from
 * end to end by u is two independent sources: a ramp with u end to end, which makes a false leak, and a bend with
 * u/2 in the middle, which sets the two halves apart.
 */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { columnsUsed, lineColumn, type SlowShape, slowName } from './readings.ts'
import { asHold } from './select.ts'

/** Level of the air pressure that nobody read, Pa: weather, and places up to about 1000 m. */
const UNREAD_LEVEL = 5000

/** Standard uncertainty of the change of an unread barometer over a hold in seconds: 25 Pa + 40 Pa/h, ≤ 700 Pa. */
export const unreadBarometer = (hold: number): number => Math.min(25 + (40 * hold) / 3600, 700)

type Shape = ExtraSource['shape']

const slow = (
  source: string,
  of: string,
  shape: SlowShape,
  u: number,
  drawn: Shape = 'normal',
): ExtraSource => ({
  source,
  label: source.replaceAll('_', ' '),
  shape: drawn,
  perturb: (columns, givens, z) => {
    const name = slowName(of, shape)
    const numbers = { ...givens.numbers, [name]: (givens.numbers[name] ?? 0) + z * u }
    return { columns, givens: { ...givens, numbers } }
  },
})

const changing = (source: string, of: string, u: number): ExtraSource[] => [
  slow(source, of, 'change', u),
  slow(`${source}_in_one_half`, of, 'bend', u / 2),
]

/** A digit r that no scatter shakes stays put however often it is read: r/√6 from end to end (JCGM 100, F.2.2.1). */
const digits = (name: string, r: number): ExtraSource[] => [
  slow(`resolution_of_${name}_over_the_hold`, name, 'change', r / Math.sqrt(6), 'rectangular'),
  slow(`resolution_of_${name}_in_mid_hold`, name, 'bend', r / Math.sqrt(12), 'rectangular'),
]

export const sources = (columns: Columns, givens: Givens, selection: Selection): readonly ExtraSource[] => {
  const hold = asHold(selection)
  const coarse = columnsUsed(columns).filter(
    (name) => (hold.residual[name] ?? 0) < (columns[name]?.resolution ?? 0) / 2,
  )
  const temperature = columns.temperature ? 'gas_less_sensor_temperature' : 'gas_temperature'
  // An altimeter is closed to the air around: only a gauge reads against it.
  const gauge = lineColumn(columns) !== 'altitude' && !columns.baro
  const level = !columns.baro && givens.numbers.field_altitude === undefined
  const length = hold.span.end - hold.span.start
  const halfWidth = hold.rows.length > 1 ? Math.abs(pointsOf(columns, givens, hold).meanRatio - 1) / 2 : 0
  return [
    ...changing(temperature, 'gas', givens.numbers.temperature_error ?? 0),
    ...(gauge ? changing('barometer_not_read', 'ambient', unreadBarometer(length)) : []),
    ...(level ? [slow('level_of_air_pressure', 'ambient', 'level', UNREAD_LEVEL)] : []),
    // An orifice follows √p where a laminar path follows p: to first order the rate is off by half of the ratio's.
    ...(halfWidth > 0
      ? [slow('path_not_laminar', 'path', 'level', halfWidth / Math.sqrt(3), 'rectangular')]
      : []),
    ...coarse.flatMap((name) => digits(name, columns[name]?.resolution ?? 0)),
  ]
}
