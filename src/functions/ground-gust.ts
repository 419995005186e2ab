/**
 * Ground gust loads on control surfaces after 14 CFR 23.415 as before amendment 64 (last amended 23-48).
 * The rule is written in ft, lb and s; it is computed here in SI from the exact definitions of those units, so its
 * constants are the rule's own and not the rounded ones of metric codes.
 */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { FOOT, ofNumbers, POUND, row } from './arguments.ts'

export const ISSUE =
  'as before amendment 64 (in force until August 2017); the applicable local code and the responsible licensed person decide'

/** ft/s per √(lb/ft²), and ft/s: V = 14.6·√(W/S) + 14.6, need not exceed 88 ft/s. */
const SLOPE = 14.6
const CAP = 88

/** Design speed of 23.415(a)(2) in m/s for a wing loading in kg/m². */
export const gustDesignSpeed = (wingLoading: number): number => {
  const poundsPerSquareFoot = (wingLoading * FOOT * FOOT) / POUND
  return Math.min(SLOPE * Math.sqrt(poundsPerSquareFoot) + SLOPE, CAP) * FOOT
}

export const gustSpeed: FormulaFunction = {
  name: 'gust_speed',
  meaning:
    'Design speed for ground gusts from the wing loading at design maximum weight: 14.6·√(W/S) + 14.6 ft/s with W/S in lb/ft², at most 88 ft/s. W/S is that of the wing, not of the surface.',
  source: `14 CFR 23.415(a)(2), ${ISSUE}`,
  parameters: [
    {
      name: 'wing_loading',
      meaning: 'design maximum mass per wing area (kg/m² or lb/ft²)',
      kind: 'area-loading',
    },
  ],
  result: 'speed',
  example: {
    formula: 'gust_speed(11 lb/ft^2)',
    value: '63.02272 ft/s',
    source: 'by hand: 14.6·√11 + 14.6',
  },
  evaluate: ofNumbers((wingLoading) =>
    wingLoading > 0 ? gustDesignSpeed(wingLoading) : 'a wing loading is greater than 0',
  ),
}

export const gustHingeMoment: FormulaFunction = {
  name: 'gust_hinge_moment',
  meaning:
    'Limit hinge moment from ground gusts, K·c·S·q. Positive moves the surface down, negative up, as the sign of K says.',
  source: `14 CFR 23.415(a)(2) and (b), ${ISSUE}`,
  parameters: [
    { name: 'K', meaning: 'factor of 23.415(b), from gust_factor', kind: 'number' },
    { name: 'c', meaning: 'mean chord of the surface aft of the hinge line', kind: 'length' },
    { name: 'S', meaning: 'area of the surface aft of the hinge line', kind: 'area' },
    { name: 'q', meaning: 'dynamic pressure at the design speed', kind: 'pressure' },
  ],
  result: 'moment',
  example: {
    formula: 'gust_hinge_moment(0.75, 0.85 ft, 6.4 ft^2, 4.720361 lbf/ft^2)',
    value: '19.25907 lbf·ft',
    source: 'by hand: 0.75 · 0.85 · 6.4 · 4.720361',
  },
  evaluate: ofNumbers((K, c, S, q) => {
    if (!(c > 0 && S > 0)) return 'chord and area are greater than 0'
    return q >= 0 ? K * c * S * q : 'a dynamic pressure is not negative'
  }),
}

/** 23.415(b). Where the rule gives both signs, the positive one stands here: load both ways. */
const FACTORS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  aileron: { locked_mid: 0.75, full_throw: 0.5 },
  elevator: { full_up: -0.75, full_down: 0.75 },
  rudder: { neutral: 0.75, full_throw: 0.75 },
}

/** Surface and position are both words, which the other functions do not have. */
const factor = (...words: (number | string)[]): number | string => {
  const [surface, position] = words
  if (words.length !== 2) return 'expects a surface and a position'
  const positions = row(FACTORS, surface)
  if (!positions) return `the rule gives factors for ${Object.keys(FACTORS).join(', ')}`
  return (
    row(positions, position) ??
    `for ${surface} the rule gives factors at ${Object.keys(positions).join(' and ')}, not at ${position}`
  )
}

export const gustFactor: FormulaFunction = {
  name: 'gust_factor',
  meaning:
    'Factor K of the ground gust hinge moment. Aileron: control locked in mid position 0.75, full throw 0.50 (positive on one, negative on the other). Elevator: full up −0.75, full down +0.75. Rudder: 0.75 both ways, neutral and full throw. Positive moves the surface down.',
  source: `14 CFR 23.415(b), ${ISSUE}`,
  parameters: [
    { name: 'surface', meaning: 'which surface', kind: 'text', words: Object.keys(FACTORS) },
    {
      name: 'position',
      meaning: 'where it stands',
      kind: 'text',
      words: [...new Set(Object.values(FACTORS).flatMap((row) => Object.keys(row)))],
    },
  ],
  result: 'number',
  example: {
    formula: 'gust_factor(aileron, full_throw)',
    value: '0.5',
    source: '14 CFR 23.415(b), table',
  },
  evaluate: factor,
}
