/** The standard atmosphere up to 20 km, and the dynamic pressure of air at rest density. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { GRAVITY, ofNumbers } from './arguments.ts'

/** U.S. Standard Atmosphere, 1976: sea level, lapse rate and gas constant of dry air. */
export const SEA_LEVEL = { temperature: 288.15, pressure: 101_325, density: 1.225 } as const
const GAS_CONSTANT = 8314.32 / 28.9644
const LAPSE = 0.0065
const TROPOPAUSE = 11_000
const LOW = -2000
const HIGH = 20_000

/**
 * Temperature (K), pressure (Pa) and density (kg/m³) at a geopotential altitude in m.
 * T = T₀ − L·h and p = p₀·(T/T₀)^(g₀/(R·L)) up to 11 km, isothermal with p = p₁₁·exp(−g₀(h − 11 km)/(R·T₁₁)) above.
 * Source: U.S. Standard Atmosphere, 1976, equations 23, 33a, 33b and 42; the same as ISO 2533 within 2 parts in 10⁶.
 * Outside −2 km to 20 km it gives null.
 */
export const standardAtmosphere = (
  altitude: number,
): { readonly temperature: number; readonly pressure: number; readonly density: number } | null => {
  if (!(altitude >= LOW && altitude <= HIGH)) return null
  const temperature = SEA_LEVEL.temperature - LAPSE * Math.min(altitude, TROPOPAUSE)
  const below =
    SEA_LEVEL.pressure * (temperature / SEA_LEVEL.temperature) ** (GRAVITY / (GAS_CONSTANT * LAPSE))
  const above = Math.max(0, altitude - TROPOPAUSE)
  const pressure = below * Math.exp((-GRAVITY * above) / (GAS_CONSTANT * temperature))
  return { temperature, pressure, density: pressure / (GAS_CONSTANT * temperature) }
}

const SOURCE = 'U.S. Standard Atmosphere, 1976 (to 32 km the same as ICAO Doc 7488 and ISO 2533)'
const TABLE = 'U.S. Standard Atmosphere, 1976, table for geopotential altitude'
const ALTITUDE = {
  name: 'h',
  meaning: 'geopotential (pressure) altitude, −2 km to 20 km',
  kind: 'length',
} as const

const atAltitude = (pick: 'temperature' | 'pressure' | 'density') =>
  ofNumbers(
    (h) =>
      standardAtmosphere(h)?.[pick] ??
      `the standard atmosphere is given here from −2 km to 20 km; ${h} m is outside`,
  )

export const airTemperature: FormulaFunction = {
  name: 'air_temperature',
  meaning: 'Temperature of the standard atmosphere at an altitude.',
  source: SOURCE,
  parameters: [ALTITUDE],
  result: 'temperature',
  example: { formula: 'air_temperature(5000 m)', value: '255.65 K', source: TABLE },
  evaluate: atAltitude('temperature'),
}

export const airPressure: FormulaFunction = {
  name: 'air_pressure',
  meaning: 'Absolute pressure of the standard atmosphere at an altitude.',
  source: SOURCE,
  parameters: [ALTITUDE],
  result: 'pressure',
  example: { formula: 'air_pressure(5000 m)', value: '54019.9 Pa', source: TABLE },
  evaluate: atAltitude('pressure'),
}

export const airDensity: FormulaFunction = {
  name: 'air_density',
  meaning: 'Density of the standard atmosphere at an altitude.',
  source: SOURCE,
  parameters: [ALTITUDE],
  result: 'density',
  example: { formula: 'air_density(5000 m)', value: '0.736115 kg/m^3', source: TABLE },
  evaluate: atAltitude('density'),
}
