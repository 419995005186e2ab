/** What belts do with a load on the occupant: which share they take, at which angle, and what their anchors see. */
import type { FormulaFunction } from '../quantity/formula/types.ts'
import { ofBoth, ofNumbers } from './arguments.ts'

const SHARES: Readonly<Record<string, number>> = { lap: 0.6, shoulder: 0.4 }
const SHARE_PARAMETERS = [
  { name: 'belt', meaning: 'which belt', kind: 'text', words: Object.keys(SHARES) },
] as const

export const restraintShare: FormulaFunction = {
  name: 'restraint_share',
  meaning:
    'Share of the forward load on an occupant that the rule for large rotorcraft gives to the lap belt (0.60) and to the shoulder harness (0.40), each at least. The light-airplane rule gives no split; this one is commonly taken. A lap belt that can be worn alone carries all of it alone.',
  source: '14 CFR 29.785(g)',
  parameters: SHARE_PARAMETERS,
  result: 'number',
  example: { formula: 'restraint_share(lap)', value: '0.6', source: '14 CFR 29.785(g)' },
  evaluate: ofBoth(
    SHARE_PARAMETERS,
    (_, [belt = '']) => SHARES[belt] ?? `belts are ${Object.keys(SHARES).join(', ')}`,
  ),
}

const NOT_ALONG = 'the distance along the load is greater than 0: a strap square to the load cannot carry it'

export const strapAngle: FormulaFunction = {
  name: 'strap_angle',
  meaning:
    'Angle of a strap in side view, from where it leaves the body to its anchor: atan(rise/run), positive where the anchor is higher. Shoulder straps from −5° to +30° are what AC 21-34 is quoted for (lower ones press on the spine, higher ones let the body travel); lap belts about −55°, quoted from an FAA brochure.',
  source: 'Geometry; angles quoted second-hand from AC 21-34 and an FAA brochure on seat belts',
  parameters: [
    { name: 'run', meaning: 'distance along the airplane from the body to the anchor', kind: 'length' },
    { name: 'rise', meaning: 'height of the anchor over that point, negative below', kind: 'length' },
  ],
  result: 'angle',
  example: {
    formula: 'strap_angle(18 in, 6 in)',
    value: '18.43495 deg',
    source: 'by hand: atan(1/3)',
  },
  evaluate: ofNumbers((run, rise) => (run > 0 ? Math.atan2(rise, run) : NOT_ALONG)),
}

const PARTS = ['total', 'along', 'across', 'vertical']
const length = (name: string, meaning: string) => ({ name, meaning, kind: 'length' }) as const
const ANCHOR_PARAMETERS = [
  {
    name: 'part',
    meaning: 'total is the tension of the strap; the others are its components at the anchor',
    kind: 'text',
    words: PARTS,
  },
  { name: 'load', meaning: 'load on the body along the airplane, held by these straps', kind: 'force' },
  { name: 'straps', meaning: 'number of like straps that share it: 2 for a lap belt', kind: 'number' },
  length('run', 'distance along the airplane from the body to the anchor'),
  length('offset', 'distance across the airplane, positive outboard'),
  length('rise', 'height of the anchor over the body’s end, negative below'),
] as const

export const anchorLoad: FormulaFunction = {
  name: 'anchor_load',
  meaning:
    'Load on one anchor of straight straps that hold a load along the airplane: tension T = (F/n)·L/run with L² = run² + offset² + rise², and its components T·run/L, T·offset/L, T·rise/L as they act on the body, so of the sign of offset and rise; the anchor is pulled the other way. For like straps on both sides, or one in the plane of the load. Friction over shoulder and hip and the stretch of the webbing are left out.',
  source:
    'Balance of forces on the body; derived, checked by hand (each of two straps at angle e carries F/(2·cos e))',
  parameters: ANCHOR_PARAMETERS,
  result: 'force',
  example: {
    formula: 'anchor_load(total, 1161 lbf, 2, 7 in, 0 in, -10 in)',
    value: '1012.272 lbf',
    source: 'by hand: 580.5 · √149/7, a lap belt at 55°',
  },
  evaluate: ofBoth(
    ANCHOR_PARAMETERS,
    (
      [load = Number.NaN, straps = Number.NaN, run = Number.NaN, offset = Number.NaN, rise = Number.NaN],
      [part = ''],
    ) => {
      if (!Number.isInteger(straps) || straps < 1) return 'the number of straps is 1, 2, …'
      if (!(run > 0)) return NOT_ALONG
      if (load < 0) return 'straps only pull: the load they hold is not negative'
      const perRun = load / straps / run
      const distances: Readonly<Record<string, number>> = {
        total: Math.hypot(run, offset, rise),
        along: run,
        across: offset,
        vertical: rise,
      }
      return perRun * (distances[part] ?? Number.NaN)
    },
  ),
}
