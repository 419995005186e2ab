/** Pressure of a column of liquid under load factor, and the energy of gas under pressure. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { GRAVITY, ofNumbers } from './arguments.ts'

export const fluidHead: FormulaFunction = {
  name: 'fluid_head',
  meaning:
    'Pressure ρ·n·g₀·h under a column of liquid; n is the total load factor normal to the surface of the liquid, 1 at rest, and h the height along the acceleration.',
  source: 'Hydrostatics; g₀ = 9.80665 m/s² by definition',
  parameters: [
    { name: 'density', meaning: 'density of the liquid', kind: 'density' },
    { name: 'load_factor', meaning: 'load factor, 1 at rest', kind: 'number' },
    { name: 'height', meaning: 'height of the column along the acceleration', kind: 'length' },
  ],
  result: 'pressure',
  example: {
    formula: 'fluid_head(720 kg/m^3, 3.8, 0.25 m)',
    value: '6707.749 Pa',
    source: 'by hand: 720 · 3.8 · 9.80665 · 0.25',
  },
  evaluate: ofNumbers((density, loadFactor, height) => {
    if (!(density > 0)) return 'a density is greater than 0'
    return height >= 0 ? density * loadFactor * GRAVITY * height : 'a height is not negative'
  }),
}

/** Ambient pressure that the standard takes for its energy, Pa. */
export const AMBIENT = 101_000
const RATIO = 1.4

/**
 * Energy in J of air or nitrogen at a gauge pressure in Pa in a volume in m³, expanding isentropically to ambient:
 * E = P·V/(k − 1)·(1 − (Pₐ/P)^((k − 1)/k)), P = gauge + Pₐ, k = 1.4, Pₐ = 101,000 Pa.
 * Source: ASME PCC-2 mandatory appendix II of article 5.1 (2008), later 501-II, which rounds (k − 1)/k to 0.286
 * and so comes out up to 0.1 % higher.
 */
export const gasEnergy = (gauge: number, volume: number): number => {
  const pressure = gauge + AMBIENT
  return ((pressure * volume) / (RATIO - 1)) * (1 - (AMBIENT / pressure) ** ((RATIO - 1) / RATIO))
}

export const storedEnergy: FormulaFunction = {
  name: 'stored_energy',
  meaning:
    'Energy of air or nitrogen under a gauge pressure that would be set free by isentropic expansion to ambient. The volume is that of the gas, not of the tank.',
  source:
    'ASME PCC-2 article 5.1 (2008), appendix II; 501-II in later editions; k = 1.4 with its exact exponent',
  parameters: [
    { name: 'pressure', meaning: 'gauge pressure, above ambient', kind: 'pressure' },
    { name: 'volume', meaning: 'volume of the gas', kind: 'volume' },
  ],
  result: 'energy',
  example: {
    formula: 'stored_energy(3.5 psi, 0.1 m^3)',
    value: '1857.493 J',
    source: 'the equation of ASME PCC-2 with the exponent 2/7, computed apart',
  },
  evaluate: ofNumbers((gauge, volume) => {
    if (gauge < 0) return 'the equation is for pressure above ambient; a vacuum stores its energy outside'
    return volume > 0 ? gasEnergy(gauge, volume) : 'a volume is greater than 0'
  }),
}
