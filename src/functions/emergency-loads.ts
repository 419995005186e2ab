/**
 * Emergency landing loads on occupants and their restraint, after 14 CFR 23.561(b) by amendment, up to amendment 64,
 * which replaced the figures by 23.2270 without any (in force from 30 August 2017).
 */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { GRAVITY, ofBoth, POUND, row } from './arguments.ts'
import { ISSUE } from './ground-gust.ts'

type Factors = Readonly<Record<string, number>>

const DIRECTIONS = ['up', 'forward', 'side', 'down']
const CATEGORIES = ['normal', 'utility', 'acrobatic', 'commuter']
const MASSES = ['occupant', 'item_of_mass']

/** Amendments that matter: items of mass get factors of their own; the downward factor comes in; no figures any more. */
const ITEMS_APART = 36
const DOWNWARD = 46
const LAST = 63
const COMMUTER = 34

const OCCUPANT: Factors = { forward: 9, side: 1.5 }
const OCCUPANT_UP = { acrobatic: 4.5, other: 3 }
/** (b)(2)(iv). */
const OCCUPANT_DOWN = 6
/** (b)(3), from amendment 36. */
const ITEM: Factors = { up: 3, forward: 18, side: 4.5 }

const occupantFactor = (category: string, direction: string): number =>
  row(OCCUPANT, direction) ?? (category === 'acrobatic' ? OCCUPANT_UP.acrobatic : OCCUPANT_UP.other)

const issueFault = (amendment: number, category: string): string | null => {
  if (!Number.isInteger(amendment) || amendment < 0)
    return 'an amendment of part 23 is its number, from 0 on: 62 for amendment 23-62'
  if (amendment > LAST)
    return `amendment 64 replaced the figures of 23.561 by 23.2270, which has none; take them from the accepted standard, or name an amendment up to ${LAST}`
  return category === 'commuter' && amendment < COMMUTER
    ? `the commuter category came with amendment ${COMMUTER}`
    : null
}

/** Ultimate load factor of 23.561(b), or a sentence where the rule has none. */
export const emergencyFactor = (
  amendment: number,
  category: string,
  mass: string,
  direction: string,
): number | string => {
  const fault = issueFault(amendment, category)
  if (fault) return fault
  const apart = mass === 'item_of_mass' && amendment >= ITEMS_APART
  if (direction !== 'down')
    return apart ? (row(ITEM, direction) ?? Number.NaN) : occupantFactor(category, direction)
  if (mass === 'item_of_mass') return 'the rule has no downward factor for items of mass'
  return amendment >= DOWNWARD
    ? OCCUPANT_DOWN
    : `the rule has no downward factor before amendment ${DOWNWARD}`
}

const AMENDMENT = {
  name: 'amendment',
  meaning: 'amendment of part 23 in the certification basis, 0 to 63 (62 for 23-62)',
  kind: 'number',
} as const
const CATEGORY = {
  name: 'category',
  meaning: 'category of the airplane',
  kind: 'text',
  words: CATEGORIES,
} as const
const DIRECTION = {
  name: 'direction',
  meaning: 'way in which the mass is thrown, relative to the structure around it',
  kind: 'text',
  words: DIRECTIONS,
} as const
const RULE = '14 CFR 23.561(b)(2) and (3)'
const HISTORY = 'amendments 23-0, 23-7, 23-36, 23-46, 23-48, 23-62'

const FACTOR_PARAMETERS = [
  AMENDMENT,
  CATEGORY,
  {
    name: 'mass',
    meaning: 'occupant, or an item of mass in the cabin that could injure one',
    kind: 'text',
    words: MASSES,
  },
  DIRECTION,
] as const

export const emergencyLoadFactor: FormulaFunction = {
  name: 'emergency_load_factor',
  meaning:
    'Ultimate static load factor in an emergency landing. Occupants: up 3.0 (acrobatic 4.5), forward 9.0, side 1.5; down 6.0 from amendment 46, there only where the exits of 23.807(d)(4) are asked for. Items of mass in the cabin: as occupants before amendment 36, then up 3.0, forward 18.0, side 4.5. The factors act one at a time. They are ultimate: no factor of 1.5 comes on top. The dynamic tests of 23.562 are apart.',
  source: `${RULE}, ${HISTORY}; ${ISSUE}`,
  parameters: FACTOR_PARAMETERS,
  result: 'number',
  example: {
    formula: 'emergency_load_factor(62, normal, item_of_mass, forward)',
    value: '18',
    source: '14 CFR 23.561(b)(3)(ii)',
  },
  evaluate: ofBoth(
    FACTOR_PARAMETERS,
    ([amendment = Number.NaN], [category = '', mass = '', direction = '']) =>
      emergencyFactor(amendment, category, mass, direction),
  ),
}

/** 23.785(a), 23.625(d); the same in 29.785(f)(2). */
const FITTING = 1.33

const LOAD_PARAMETERS = [
  AMENDMENT,
  CATEGORY,
  DIRECTION,
  { name: 'mass', meaning: 'mass of the occupant, with parachute where one is worn', kind: 'mass' },
] as const

export const restraintLoad: FormulaFunction = {
  name: 'restraint_load',
  meaning:
    'Ultimate load 1.33·n·m·g₀ that the attachments of seat, belt and harness of one occupant carry together to the structure; 1.33 is the fitting factor for attachments. For webbing and buckles leave it out: emergency_load_factor times mass times g0. Anchors share it by restraint_share and anchor_load.',
  source: `${RULE}, ${HISTORY}; fitting factor 23.785(a) and 23.625(d), read in the like-worded 29.785(f) and 29.625(d); ${ISSUE}`,
  parameters: LOAD_PARAMETERS,
  result: 'force',
  example: {
    formula: 'restraint_load(62, normal, forward, 215 lb)',
    value: '2573.55 lbf',
    source: 'by hand: 1.33 · 9 · 215 lbf',
  },
  evaluate: ofBoth(
    LOAD_PARAMETERS,
    ([amendment = Number.NaN, mass = Number.NaN], [category = '', direction = '']) => {
      if (!(mass > 0)) return 'a mass is greater than 0'
      const factor = emergencyFactor(amendment, category, 'occupant', direction)
      return typeof factor === 'string' ? factor : FITTING * factor * mass * GRAVITY
    },
  ),
}

/** In lb. 170 lb for commuters is read in 23.785(c); 215 lb for the others, and 170 lb before, are second-hand. */
const occupantPounds = (amendment: number, category: string): number =>
  amendment >= ITEMS_APART && category !== 'commuter' ? 215 : 170

const OCCUPANT_PARAMETERS = [AMENDMENT, CATEGORY] as const

export const occupantMass: FormulaFunction = {
  name: 'occupant_mass',
  meaning:
    'Mass of an occupant that seat and restraint are designed for: 215 lb from amendment 36, 170 lb before and in the commuter category. The least that the rule takes: heavier people, and parachutes, are the card’s to add.',
  source: `14 CFR 23.785(c) for commuters; 215 lb of 23.785(a), and 170 lb before it, second-hand (not read in the rule itself); ${ISSUE}`,
  parameters: OCCUPANT_PARAMETERS,
  result: 'mass',
  example: { formula: 'occupant_mass(62, commuter)', value: '170 lb', source: '14 CFR 23.785(c)' },
  evaluate: ofBoth(
    OCCUPANT_PARAMETERS,
    ([amendment = Number.NaN], [category = '']) =>
      issueFault(amendment, category) ?? occupantPounds(amendment, category) * POUND,
  ),
}
