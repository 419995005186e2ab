/**
 * Limit pilot forces after 14 CFR 23.397(b) as before amendment 64. Maxima grow with weight above 5,000 lb, minima
 * do not. The forces act at the grips and pads.
 */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofNumbers, ofWord, POUND, POUND_FORCE, row } from './arguments.ts'
import { ISSUE } from './ground-gust.ts'

type Row = { readonly most: number; readonly least: number; readonly grows: boolean }

/** In lbf. A wheel's aileron force is a couple of 50 lbf (40 lbf) on its diameter; note 3 adds 1.25 times as one force. */
const FORCES: Readonly<Record<string, Row>> = {
  aileron_stick: { most: 67, least: 40, grows: true },
  aileron_wheel_tangential: { most: 1.25 * 50, least: 1.25 * 40, grows: true },
  elevator_stick: { most: 167, least: 100, grows: true },
  elevator_wheel: { most: 200, least: 100, grows: true },
  // The table has one value for one handgrip, in neither sense a maximum that grows.
  elevator_wheel_one_hand: { most: 100, least: 100, grows: false },
  rudder: { most: 200, least: 150, grows: true },
}
const COUPLE = { most: 50, least: 40 }

/** Note 1: linear from 1 at 5,000 lb to 1.18 at 12,500 lb (normal, utility and aerobatic category). */
const GROWTH = { from: 5000, to: 12_500, at: 1.18 }

/** Factor on the maxima for a design mass in kg, or a sentence outside the rule. */
const growth = (mass: number): number | string => {
  const pounds = mass / POUND
  if (!(pounds > 0)) return 'a weight is greater than 0'
  if (pounds > GROWTH.to * (1 + 1e-9))
    return `the growth of 23.397(b) note 1 ends at 12,500 lb for other than commuter category; ${pounds.toFixed(0)} lb is beyond`
  return 1 + ((GROWTH.at - 1) * Math.max(0, pounds - GROWTH.from)) / (GROWTH.to - GROWTH.from)
}

const AXIS = {
  name: 'axis',
  meaning: 'which control',
  kind: 'text',
  words: Object.keys(FORCES),
} as const
const WEIGHT = { name: 'weight', meaning: 'design maximum mass', kind: 'mass' } as const
const SOURCE = `14 CFR 23.397(b), ${ISSUE}`
const rowOf = (axis: string): Row | string =>
  row(FORCES, axis) ?? `the rule gives forces for ${Object.keys(FORCES).join(', ')}`

export const pilotForceLimit: FormulaFunction = {
  name: 'pilot_force_limit',
  meaning:
    'Maximum limit pilot force at the grip or pedal; above 5,000 lb it grows linearly to 1.18 times at 12,500 lb. The single force on an aileron wheel is 1.25 times its couple force.',
  source: SOURCE,
  parameters: [AXIS, WEIGHT],
  result: 'force',
  example: {
    formula: 'pilot_force_limit(elevator_stick, 8000 lb)',
    value: '179.024 lbf',
    source: 'by hand: 167 · (1 + 0.18 · 3000/7500)',
  },
  evaluate: ofWord((axis, mass) => {
    const forces = rowOf(axis)
    const factor = growth(mass)
    if (typeof forces === 'string') return forces
    if (typeof factor === 'string') return factor
    return forces.most * POUND_FORCE * (forces.grows ? factor : 1)
  }),
}

export const pilotForceMinimum: FormulaFunction = {
  name: 'pilot_force_minimum',
  meaning:
    'Minimum limit pilot force at the grip or pedal, for any weight. Where hinge moments of 23.415 are used instead, not less than 0.6 times this (note 2).',
  source: SOURCE,
  parameters: [AXIS],
  result: 'force',
  example: {
    formula: 'pilot_force_minimum(rudder)',
    value: '667.2332 N',
    source: '14 CFR 23.397(b), table: 150 lbf',
  },
  evaluate: ofWord((axis) => {
    const forces = rowOf(axis)
    return typeof forces === 'string' ? forces : forces.least * POUND_FORCE
  }),
}

const DIAMETER = { name: 'diameter', meaning: 'diameter of the control wheel', kind: 'length' } as const
const couple = (force: number, diameter: number): number | string =>
  diameter > 0 ? force * POUND_FORCE * diameter : 'a diameter is greater than 0'

export const wheelCoupleLimit: FormulaFunction = {
  name: 'aileron_wheel_couple_limit',
  meaning:
    'Maximum limit couple on an aileron control wheel, 50·D in·lbf with D in inches; it grows with weight as the forces do.',
  source: SOURCE,
  parameters: [DIAMETER, WEIGHT],
  result: 'moment',
  example: {
    formula: 'aileron_wheel_couple_limit(14 in, 1320 lb)',
    value: '79.08938 N·m',
    source: 'by hand: 50 lbf · 14 in = 700 in·lbf',
  },
  evaluate: ofNumbers((diameter, mass) => {
    const factor = growth(mass)
    return typeof factor === 'string' ? factor : couple(COUPLE.most * factor, diameter)
  }),
}

export const wheelCoupleMinimum: FormulaFunction = {
  name: 'aileron_wheel_couple_minimum',
  meaning: 'Minimum limit couple on an aileron control wheel, 40·D in·lbf with D in inches.',
  source: SOURCE,
  parameters: [DIAMETER],
  result: 'moment',
  example: {
    formula: 'aileron_wheel_couple_minimum(14 in)',
    value: '63.27150 N·m',
    source: 'by hand: 40 lbf · 14 in = 560 in·lbf',
  },
  evaluate: ofNumbers((diameter) => couple(COUPLE.least, diameter)),
}
