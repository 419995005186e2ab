/**
 * Sources of uncertainty that only this method knows: the slow errors over the hold. Each error that may grow
 * from end to end by u is two independent sources, as if it grew by u/√2 in each half on its own: a ramp with u
 * end to end, which makes a false leak, and a bend with u/2 in the middle, which sets the halves apart.
 */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { GRAVITY_SPREAD, testSign } from './constants.ts'
import { coarseColumns } from './digits.ts'
import { pointsOf } from './points.ts'
import { type SlowShape, slowName } from './readings.ts'
import { asHold, type Hold } from './select.ts'

/** Gas anywhere within ±20 K of the reference temperature where no thermometer is read: what hangars see. */
const UNREAD_TEMPERATURE = 20 / Math.sqrt(3)
/**
 * Level of the air pressure where no barometer is read, Pa, normal: with the height of the place known that of the
 * weather, else also that of places up to about 1000 m. It only acts through walls and temperature.
 */
const UNREAD_LEVEL = { known: 1200, unknown: 5000 }
/** Half the range of wall expansion from none to plastic (13 % of the effect of the gas at 293 K), as one u. */
const UNKNOWN_EXPANSION = 0.13 / 3 / 293.15 / Math.sqrt(3)

/** Standard uncertainty of the change of an unread barometer over a hold in seconds: 25 Pa + 40 Pa/h, ≤ 700 Pa. */
export const unreadBarometer = (hold: number): number => Math.min(25 + (40 * hold) / 3600, 700)

const addTo = (givens: Givens, name: string, by: number): Givens => ({
  ...givens,
  numbers: { ...givens.numbers, [name]: (givens.numbers[name] ?? 0) + by },
})

const slow = (
  source: string,
  label: string,
  of: string,
  shape: SlowShape,
  u: number,
  distribution: ExtraSource['shape'] = 'normal',
): ExtraSource => ({
  source,
  label,
  shape: distribution,
  perturb: (columns, givens, z) => ({ columns, givens: addTo(givens, slowName(of, shape), z * u) }),
})

const changing = (source: string, label: string, of: string, u: number): ExtraSource[] => [
  slow(source, label, of, 'change', u),
  slow(`${source}_in_one_half`, `${label}, unlike in the two halves`, of, 'bend', u / 2),
]

/**
 * A digit r that is not shaken by scatter stays put however often it is read: r/√6 from end to end (JCGM 100,
 * F.2.2.1, twice), and r/√12 of its own in the middle.
 */
const digits = (name: string, r: number): ExtraSource[] => {
  const words = name.replaceAll('_', ' ')
  const source = `resolution_of_${name}`
  return [
    slow(
      `${source}_over_the_hold`,
      `resolution of ${words}`,
      name,
      'change',
      r / Math.sqrt(6),
      'rectangular',
    ),
    slow(`${source}_in_mid_hold`, `resolution of ${words}`, name, 'bend', r / Math.sqrt(12), 'rectangular'),
  ]
}

const ofTemperature = (columns: Columns, givens: Givens): ExtraSource[] => {
  const change = givens.numbers.temperature_error ?? 0
  const named = columns.temperature ? 'gas_less_sensor_temperature' : 'gas_temperature'
  const label = columns.temperature ? 'change of gas less sensor temperature' : 'change of gas temperature'
  const level = slow(
    'gas_temperature_level',
    'level of the gas temperature',
    'gas',
    'level',
    UNREAD_TEMPERATURE,
  )
  return [...changing(named, label, 'gas', change), ...(columns.temperature ? [] : [level])]
}

const ofBarometer = (columns: Columns, givens: Givens, hold: Hold): ExtraSource[] => {
  if (columns.baro) return []
  const change = unreadBarometer(hold.span.end - hold.span.start)
  const level = givens.numbers.elevation === undefined ? UNREAD_LEVEL.unknown : UNREAD_LEVEL.known
  return [
    ...changing('barometer_not_read', 'air pressure, not read', 'ambient', change),
    slow('level_of_air_pressure', 'level of the air pressure', 'ambient', 'level', level),
  ]
}

/** An orifice follows √p where a laminar path follows p: to first order the rate is off by half of the ratio's. */
const ofPath = (columns: Columns, givens: Givens, hold: Hold): ExtraSource[] => {
  const halfWidth = Math.abs(pointsOf(columns, givens, hold).meanRatio - 1) / 2
  if (!(halfWidth > 0) || Number.isNaN(testSign(givens))) return []
  const label = 'path of the leak not laminar'
  return [slow('path_not_laminar', label, 'path', 'level', halfWidth / Math.sqrt(3), 'rectangular')]
}

export const sources = (columns: Columns, givens: Givens, selection: Selection): readonly ExtraSource[] => {
  const hold = asHold(selection)
  const expansion: ExtraSource = {
    source: 'expansion_of_the_walls_not_given',
    label: 'expansion of the walls, not given',
    shape: 'rectangular',
    perturb: (same, moved, z) => ({
      columns: same,
      givens: addTo(moved, 'thermal_expansion', z * UNKNOWN_EXPANSION),
    }),
  }
  const u = GRAVITY_SPREAD / Math.sqrt(3)
  const gravity = slow('local_gravity', 'local gravity', 'gravity', 'level', u, 'rectangular')
  return [
    ...ofTemperature(columns, givens),
    ...ofBarometer(columns, givens, hold),
    ...ofPath(columns, givens, hold),
    ...coarseColumns(columns, hold).flatMap((name) => digits(name, columns[name]?.resolution ?? 0)),
    ...(givens.numbers.thermal_expansion === undefined ? [expansion] : []),
    ...(columns.leg_article ? [gravity] : []),
  ]
}
