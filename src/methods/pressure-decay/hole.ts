/** A leak as one hole: what to look for, once it has failed. */
import type { Givens } from '../method.ts'
import { referencePressure, referenceTemperature } from './constants.ts'
import { nominalAmbient } from './readings.ts'

/** J/(kg·K), U.S. Standard Atmosphere 1976: 8314.32/28.9644. */
const GAS_CONSTANT_OF_AIR = 287.0529
const HEAT_RATIO = 1.4

/** Contraction of a jet from a sharp edge: π/(π + 2), Kirchhoff 1869; real sharp-edged holes have about 0.6. */
const CONTRACTION = Math.PI / (Math.PI + 2)

/**
 * Mass flow of air per area of the jet, kg/(s·m²), from rest at `high` Pa and `temperature` K to `low` Pa: isentropic
 * (Saint-Venant and Wantzel 1839), and at the speed of sound below the critical ratio of 0.528.
 */
export const jetFlux = (high: number, low: number, temperature: number): number => {
  const k = HEAT_RATIO
  const critical = (2 / (k + 1)) ** (k / (k - 1))
  const ratio = Math.max(low / high, critical)
  const term = ((2 * k) / (k - 1)) * (ratio ** (2 / k) - ratio ** ((k + 1) / k))
  return (high / Math.sqrt(GAS_CONSTANT_OF_AIR * temperature)) * Math.sqrt(term)
}

/** Diameter in m of the one sharp-edged round hole that passes `leak` (m³/s at reference conditions) at the test pressure. */
export const equivalentHole = (leak: number, givens: Givens): number => {
  const ambient = nominalAmbient(givens)
  const inside = ambient + (givens.numbers.test_pressure ?? Number.NaN)
  const kelvin = referenceTemperature(givens)
  const mass = (leak * referencePressure(givens)) / (GAS_CONSTANT_OF_AIR * kelvin)
  const flux = jetFlux(Math.max(ambient, inside), Math.min(ambient, inside), kelvin)
  return Math.sqrt((4 * mass) / (Math.PI * CONTRACTION * flux))
}
