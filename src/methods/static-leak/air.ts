/** What altimeter and airspeed indicator make of pressures. All SI. */

/** ICAO Doc 7488 and ISO 2533: sea level, lapse rate, gas constant of dry air, free fall. */
export const SEA_LEVEL_PRESSURE = 101_325
export const SEA_LEVEL_TEMPERATURE = 288.15
const LAPSE = 0.0065
const EXPONENT = 9.80665 / (287.05287 * LAPSE)
/** Speed of sound at sea level, m/s. */
const SOUND = 340.29399

/** p = p₀ (1 − L h/T₀)^(g/(R L)): absolute pressure of the standard atmosphere up to 11 km. */
export const pressureAt = (altitude: number): number =>
  SEA_LEVEL_PRESSURE * (1 - (LAPSE * altitude) / SEA_LEVEL_TEMPERATURE) ** EXPONENT

/** The same the other way: pressure altitude, m. */
export const altitudeAt = (pressure: number): number =>
  (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - (pressure / SEA_LEVEL_PRESSURE) ** (1 / EXPONENT))

/** Impact pressure of an indicated airspeed: q_c = p₀ ((1 + V²/(5 a₀²))^3.5 − 1), compressible, subsonic. */
export const impactPressure = (airspeed: number): number =>
  SEA_LEVEL_PRESSURE * ((1 + 0.2 * (airspeed / SOUND) ** 2) ** 3.5 - 1)

/** The same the other way: indicated airspeed; below the static pressure it is counted as negative. */
export const airspeedOf = (pressure: number): number => {
  const ratio = Math.abs(pressure) / SEA_LEVEL_PRESSURE + 1
  return Math.sign(pressure) * SOUND * Math.sqrt(5 * (ratio ** (2 / 7) - 1))
}
