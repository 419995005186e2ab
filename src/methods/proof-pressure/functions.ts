/** Functions for cards: what a gas under pressure is worth as TNT, and how far to stand off. */
import type { FormulaFunction } from '../../quantity/formula/types.ts'
import { EDITIONS, standoffDistance, tntMass } from './energy.ts'

const SOURCE = 'ASME PCC-2 article 5.1 (2008), appendices II and III; 501-II and 501-III in later editions'
const ENERGY = { name: 'energy', meaning: 'stored energy of the gas', kind: 'energy' } as const

export const functions: Readonly<Record<string, FormulaFunction>> = {
  tnt_mass: {
    name: 'tnt_mass',
    meaning: 'Mass of TNT of the same energy, 4,266,920 J/kg (SI equation of the standard).',
    source: SOURCE,
    parameters: [ENERGY],
    result: 'mass',
    example: {
      formula: 'tnt_mass(1362509 J)',
      value: '0.319319 kg',
      source: '10 bar in 1 m³ by the SI equations of ASME PCC-2, computed apart',
    },
    evaluate: (energy) => (Number(energy) >= 0 ? tntMass(Number(energy)) : 'an energy is not negative'),
  },
  standoff: {
    name: 'standoff',
    meaning:
      'Distance to stand off for blast, not for fragments. pcc2_2008: 20 m/kg^(1/3) on the mass of TNT; pcc2_501: on twice the mass, as later editions have it. The standard, written for pressure equipment, keeps at least 30 m (60 m above 135.5 MJ) whatever this gives.',
    source: SOURCE,
    parameters: [
      { name: 'edition', meaning: 'pcc2_2008 or pcc2_501', kind: 'text', words: EDITIONS },
      ENERGY,
    ],
    result: 'length',
    example: {
      formula: 'standoff(pcc2_501, 1362509 J)',
      value: '17.22324 m',
      source: '10 bar in 1 m³ by the SI equations of ASME PCC-2, computed apart',
    },
    evaluate: (edition, energy) => {
      if (!EDITIONS.some((one) => one === edition)) return `editions are ${EDITIONS.join(' and ')}`
      return Number(energy) >= 0
        ? standoffDistance(String(edition), Number(energy))
        : 'an energy is not negative'
    },
  },
}
