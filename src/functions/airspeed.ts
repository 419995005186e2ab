/** True and equivalent airspeed: the speed through the air, and the speed at sea level that loads the aircraft alike. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofNumbers } from './arguments.ts'
import { SEA_LEVEL } from './atmosphere.ts'

const SOURCE =
  'Definition, ½ρ₀Vₑ² = ½ρV²; ρ₀ = 1.225 kg/m³ of the U.S. Standard Atmosphere, 1976 (the same as ISO 2533)'
const DENSITY = {
  name: 'density',
  meaning: 'density of the air, from air_density(altitude) or as it was on the day',
  kind: 'density',
} as const
const NO_AIR = 'a density is greater than 0'

/** √(ρ/ρ₀), the ratio of equivalent to true airspeed; `density` in kg/m³. */
const rootOfDensityRatio = (density: number): number => Math.sqrt(density / SEA_LEVEL.density)

export const equivalentAirspeed: FormulaFunction = {
  name: 'equivalent_airspeed',
  meaning:
    'Equivalent airspeed v·√(ρ/ρ₀) of a true airspeed: at sea level in the standard atmosphere it has the same dynamic pressure, so loads and hinge moments follow from it. An airspeed indicator without error shows it up to compressibility: 0.4 kt too much at 150 kt and 10,000 ft.',
  source: SOURCE,
  parameters: [{ name: 'v', meaning: 'true airspeed', kind: 'speed' }, DENSITY],
  result: 'speed',
  example: {
    formula: 'equivalent_airspeed(100 m/s, air_density(5000 m))',
    value: '77.51840 m/s',
    source: 'by hand: 100 · √(0.736115/1.225), density from the table of the standard atmosphere',
  },
  evaluate: ofNumbers((v, density) => (density > 0 ? v * rootOfDensityRatio(density) : NO_AIR)),
}

export const trueAirspeed: FormulaFunction = {
  name: 'true_airspeed',
  meaning:
    'True airspeed v·√(ρ₀/ρ) of an equivalent airspeed: roll rates, vent flows and aeroelastic frequencies follow from it.',
  source: SOURCE,
  parameters: [{ name: 'v', meaning: 'equivalent airspeed', kind: 'speed' }, DENSITY],
  result: 'speed',
  example: {
    formula: 'true_airspeed(100 m/s, 0.30625 kg/m^3)',
    value: '200 m/s',
    source: 'by hand: a quarter of the sea-level density doubles the speed',
  },
  evaluate: ofNumbers((v, density) => (density > 0 ? v / rootOfDensityRatio(density) : NO_AIR)),
}
