/** A scale weighs a force and shows a mass for the gravity of the place where it was adjusted. */
import type { Givens } from '../method.ts'

/**
 * Normal gravity at a latitude (rad) and height above sea level (m), m/s².
 * Somigliana's formula with the constants of WGS 84 (NGA.STND.0036, 4-1), and −3.086 µm/s² per metre of height.
 */
export const gravity = (latitude: number, height: number): number => {
  const s2 = Math.sin(latitude) ** 2
  const atSeaLevel = (9.7803253359 * (1 + 0.00193185265241 * s2)) / Math.sqrt(1 - 0.00669437999014 * s2)
  return atSeaLevel - 3.086e-6 * height
}

/** Mass over what the scale shows: gravity where it was adjusted over gravity here; 1 where it was checked here. */
export const gravityFactor = ({ numbers }: Givens): number => {
  const { latitude, scale_latitude, elevation = 0, scale_elevation = 0 } = numbers
  if (latitude === undefined || scale_latitude === undefined) return 1
  return gravity(scale_latitude, scale_elevation) / gravity(latitude, elevation)
}
