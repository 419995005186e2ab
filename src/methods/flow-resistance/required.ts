/** What a vent or line must pass. */
import type { Givens } from '../method.ts'

export type Way = 'in' | 'out'

/** U.S. Standard Atmosphere, 1976: g₀ [m/s²], R [J/(kg K)], T₀ [K], lapse [K/m], tropopause [m]. */
const GRAVITY = 9.80665
const GAS_CONSTANT = 8314.32 / 28.9644
const SEA_LEVEL = 288.15
const LAPSE = 0.0065
const TROPOPAUSE = 11_000

/**
 * Share of its volume that a gas at ambient pressure gains for each metre of climb, 1/m: −(1/P) dP/dh = ρ g₀/P =
 * g₀/(R T), with hydrostatics dP = −ρ g₀ dh and the temperature of the standard atmosphere at `altitude` (m).
 * The gas of the ullage keeps its temperature (isothermal): more than any faster change would drive.
 */
export const breathing = (altitude: number): number =>
  GRAVITY / (GAS_CONSTANT * (SEA_LEVEL - LAPSE * Math.min(altitude, TROPOPAUSE)))

/**
 * Flow in m³/s that must pass one way: V/P · ρ g₀ · dh/dt, and the flow of liquid that changes place with gas.
 * Undefined where nothing is asked that way.
 */
export const requiredFlow = ({ numbers }: Givens, way: Way): number | undefined => {
  const { ullage, altitude } = numbers
  const rate = (way === 'out' ? numbers.climb_rate : numbers.descent_rate) ?? 0
  const liquid = (way === 'out' ? numbers.refuel_rate : numbers.draw_rate) ?? 0
  if (rate > 0 && (ullage === undefined || altitude === undefined)) return undefined
  const flow = (rate > 0 ? (ullage ?? 0) * breathing(altitude ?? 0) * rate : 0) + liquid
  return flow > 0 ? flow : undefined
}
