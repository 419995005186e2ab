/** Energy that a pressure test stores, and how far to stand off from it. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofBoth, ofNumbers } from './arguments.ts'

/** Ambient pressure that the standard takes for its energy, Pa. */
const AMBIENT = 101_000
const RATIO = 1.4

/**
 * Energy in J of air or nitrogen at a gauge pressure in Pa in a volume in m³, expanding isentropically to ambient:
 * E = P·V/(k − 1)·(1 − (Pₐ/P)^((k − 1)/k)), P = gauge + Pₐ, k = 1.4, Pₐ = 101,000 Pa.
 * Source: ASME PCC-2 mandatory appendix II of article 5.1 (2008), later 501-II, which rounds (k − 1)/k to 0.286
 * and so comes out up to 0.1 % higher.
 */
const gasEnergy = (gauge: number, volume: number): number => {
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

export const elasticEnergy: FormulaFunction = {
  name: 'elastic_energy',
  meaning:
    'Energy ½·p²·C that walls and liquid give back when the pressure is let go; C is the volume taken up per pressure, that of the walls plus V/K of the liquid (K: bulk modulus). A pressure test with liquid stores this alone; one with gas stores it beside stored_energy.',
  source: 'Work ∫ p dV on a linear spring; derived, checked by hand',
  parameters: [
    { name: 'pressure', meaning: 'gauge pressure, above or below ambient', kind: 'pressure' },
    { name: 'compliance', meaning: 'volume taken up per pressure', kind: 'volume-compliance' },
  ],
  result: 'energy',
  example: {
    formula: 'elastic_energy(3.5 psi, 0.1 m^3/2.18 GPa)',
    value: '0.01335634 J',
    source: 'by hand: 0.1 m³ of water in a rigid tank, p²·V/(2·K)',
  },
  evaluate: ofNumbers((pressure, compliance) =>
    compliance >= 0 ? 0.5 * pressure ** 2 * compliance : 'a volume per pressure is not negative',
  ),
}

const STANDARD = 'ASME PCC-2 article 5.1 (2008), appendices II and III; 501-II and 501-III in later editions'
const ENERGY = { name: 'energy', meaning: 'energy stored by gas and walls', kind: 'energy' } as const
const NEGATIVE = 'an energy is not negative'

/** J/kg in the SI equations. The US figure of 1,488,617 ft·lbf/lb is 4 % more and is not mixed in. */
const TNT = 4_266_920
/** Smallest scaled distance, m/kg^(1/3), and how many times the mass of TNT an edition takes. */
const SCALED = 20
const MASSES: Readonly<Record<string, number>> = { pcc2_2008: 1, pcc2_501: 2 }

export const tntMass: FormulaFunction = {
  name: 'tnt_mass',
  meaning: 'Mass of TNT of the same energy, 4,266,920 J/kg (SI equation of the standard).',
  source: STANDARD,
  parameters: [ENERGY],
  result: 'mass',
  example: {
    formula: 'tnt_mass(1362509 J)',
    value: '0.319319 kg',
    source: '10 bar in 1 m³ by the SI equations of ASME PCC-2, computed apart',
  },
  evaluate: ofNumbers((energy) => (energy >= 0 ? energy / TNT : NEGATIVE)),
}

const STANDOFF_PARAMETERS = [
  { name: 'edition', meaning: 'edition of the standard', kind: 'text', words: Object.keys(MASSES) },
  ENERGY,
] as const

export const standoff: FormulaFunction = {
  name: 'standoff',
  meaning:
    'Distance to stand off for blast, not for fragments: a cap or a fitting flies farther. pcc2_2008: 20 m/kg^(1/3) on the mass of TNT; pcc2_501: on twice the mass, as later editions have it. The standard, written for pressure equipment, keeps at least standoff_least whatever this gives. Never nearer than the team’s own rule; raise in steps, with a relief valve, and let nobody approach while it rises; with liquid next to nothing is stored.',
  source: STANDARD,
  parameters: STANDOFF_PARAMETERS,
  result: 'length',
  example: {
    formula: 'standoff(pcc2_501, 1362509 J)',
    value: '17.22324 m',
    source: '10 bar in 1 m³ by the SI equations of ASME PCC-2, computed apart',
  },
  evaluate: ofBoth(STANDOFF_PARAMETERS, ([energy = Number.NaN], [edition = '']) =>
    energy >= 0 ? SCALED * Math.cbrt(((MASSES[edition] ?? Number.NaN) * energy) / TNT) : NEGATIVE,
  ),
}

/** J, and m that are kept up to there. */
const LEAST = [
  [135.5e6, 30],
  [271e6, 60],
] as const

export const standoffLeast: FormulaFunction = {
  name: 'standoff_least',
  meaning:
    'Distance that the table of the standard keeps in any case: 30 m up to 135.5 MJ, 60 m up to 271 MJ; beyond, the equation of standoff alone. It is meant for pressure equipment, not for an aircraft tank of a few kPa; there the energy says more.',
  source: STANDARD,
  parameters: [ENERGY],
  result: 'length',
  example: {
    formula: 'standoff_least(152 MJ)',
    value: '60 m',
    source: 'table of ASME PCC-2 article 5.1 (2008), 20 bar in 50 m³',
  },
  evaluate: ofNumbers((energy) => {
    if (energy < 0) return NEGATIVE
    const kept = LEAST.find(([upTo]) => energy <= upTo)
    return kept
      ? kept[1]
      : 'beyond 271 MJ the standard has no distance of its own; the equation of standoff decides'
  }),
}
