/** Constants of the method, each with its source. All SI. */
import type { Givens } from '../method.ts'

/** Standard acceleration of free fall, m/s²; 3rd CGPM, 1901. */
export const STANDARD_GRAVITY = 9.80665

/** Half-width of gravity on the ground about the standard value: 9.780 m/s² at the equator, 9.832 at the poles. */
export const GRAVITY_SPREAD = 0.0027

const STANDARD_PRESSURE = 101_325
const STANDARD_TEMPERATURE = 288.15

/** Pressure of the standard atmosphere at a height in metres, Pa; ICAO Doc 7488, troposphere. */
export const pressureAtHeight = (height: number): number =>
  STANDARD_PRESSURE * (1 - (0.0065 * height) / STANDARD_TEMPERATURE) ** 5.25588

/**
 * Viscosity of air, Pa·s, at a temperature in kelvins: Sutherland's law with the constants of the
 * U.S. Standard Atmosphere 1976, table 1 (β = 1.458e-6, S = 110.4 K).
 */
export const airViscosity = (temperature: number): number =>
  (1.458e-6 * temperature ** 1.5) / (temperature + 110.4)

export const referencePressure = (givens: Givens): number =>
  givens.numbers.reference_pressure ?? STANDARD_PRESSURE

export const referenceTemperature = (givens: Givens): number =>
  givens.numbers.reference_temperature ?? STANDARD_TEMPERATURE

/** +1 where the test is under pressure, −1 under vacuum. */
export const testSign = (givens: Givens): number => Math.sign(givens.numbers.test_pressure ?? Number.NaN)
