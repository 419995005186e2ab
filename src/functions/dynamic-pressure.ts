/** Dynamic pressure q = ½ρv², at sea level or at a stated density. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofNumbers } from './arguments.ts'
import { SEA_LEVEL } from './atmosphere.ts'

const SOURCE =
  'Definition, incompressible flow; below 150 kt the impact pressure of compressible flow is at most 1.3 % higher'
const SPEED = {
  name: 'v',
  meaning: 'speed through the air (equivalent airspeed at sea-level density)',
  kind: 'speed',
} as const

export const dynamicPressure: FormulaFunction = {
  name: 'dynamic_pressure',
  meaning: 'Dynamic pressure ½ρ₀v² at the sea-level density of the standard atmosphere, 1.225 kg/m³.',
  source: SOURCE,
  parameters: [SPEED],
  result: 'pressure',
  example: {
    formula: 'dynamic_pressure(100 kt)',
    value: '1621.0002 Pa',
    source: 'by hand: ½ · 1.225 kg/m³ · (51.4444 m/s)²',
  },
  evaluate: ofNumbers((v) => 0.5 * SEA_LEVEL.density * v * v),
}

export const dynamicPressureAt: FormulaFunction = {
  name: 'dynamic_pressure_at',
  meaning: 'Dynamic pressure ½ρv² at a stated density, for a true airspeed.',
  source: SOURCE,
  parameters: [
    { name: 'v', meaning: 'true airspeed', kind: 'speed' },
    { name: 'density', meaning: 'density of the air', kind: 'density' },
  ],
  result: 'pressure',
  example: {
    formula: 'dynamic_pressure_at(60 m/s, 1 kg/m^3)',
    value: '1800 Pa',
    source: 'by hand: ½ · 1 kg/m³ · (60 m/s)²',
  },
  evaluate: ofNumbers((v, density) => (density > 0 ? 0.5 * density * v * v : 'a density is greater than 0')),
}
