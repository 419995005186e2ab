/**
 * Energy of a gas under pressure and the distance to stand off from it, after ASME PCC-2: article 5.1 with mandatory
 * appendices II and III in the edition of 2008, article 501 with 501-II and 501-III in later ones. SI equations.
 */

/** Absolute pressure of the air that the standard takes, Pa. */
const AMBIENT = 101_000
/** Ratio of specific heats of air and nitrogen. */
const RATIO = 1.4
/** J/kg, equation II-4 in SI. Its US figure of 1,488,617 ft·lbf/lb is 4 % more and is not mixed in. */
const TNT = 4_266_920
/** Smallest scaled distance, m/kg^(1/3), table III-1. */
const SCALED = 20

export const EDITIONS = ['pcc2_2008', 'pcc2_501'] as const

/**
 * J set free by isentropic expansion to ambient: E = P V/(k − 1) · (1 − (Pₐ/P)^((k − 1)/k)); `gauge` in Pa, `volume`
 * in m³. The standard rounds the exponent to 0.286, which is up to 0.1 % more. NaN below ambient: the energy of a
 * vacuum is outside.
 */
export const gasEnergy = (gauge: number, volume: number): number => {
  if (!(gauge >= 0 && volume >= 0)) return Number.NaN
  const pressure = gauge + AMBIENT
  return ((pressure * volume) / (RATIO - 1)) * (1 - (AMBIENT / pressure) ** ((RATIO - 1) / RATIO))
}

/** Equivalent mass of TNT, kg. */
export const tntMass = (energy: number): number => energy / TNT

/** Distance for blast, m: 20 m/kg^(1/3) times the cube root of the mass of TNT (2008), or of twice that (501). */
export const standoffDistance = (edition: string, energy: number): number =>
  SCALED * Math.cbrt((edition === 'pcc2_2008' ? 1 : 2) * tntMass(energy))
