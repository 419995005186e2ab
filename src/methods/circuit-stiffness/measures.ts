/** What is computed. */
import type { MeasureField } from '../method.ts'

const angular = (name: string, meaning: string, symbol?: string): MeasureField => ({
  name,
  meaning,
  kind: 'angular-stiffness',
  or: ['linear-stiffness'],
  ...(symbol ? { symbol } : {}),
})

const motion = (name: string, meaning: string, more: Partial<MeasureField> = {}): MeasureField => ({
  name,
  meaning,
  kind: 'angle',
  or: ['length'],
  ...more,
})

const load = (name: string, meaning: string, more: Partial<MeasureField> = {}): MeasureField => ({
  name,
  meaning,
  kind: 'moment',
  or: ['force'],
  ...more,
})

const PLAY_SOURCE =
  'incremental loads both ways, lines extended to zero load: procedure of a public service document for a transport aircraft’s trim tab'

export const measures: readonly MeasureField[] = [
  {
    name: 'stiffness',
    meaning: 'moment per angle at the loaded end',
    kind: 'angular-stiffness',
    symbol: 'K',
  },
  {
    name: 'surface_stiffness',
    meaning:
      'moment per angle at the surface: the stiffness where the surface was loaded, stiffness over gearing² where the cockpit was',
    kind: 'angular-stiffness',
    symbol: 'K_s',
  },
  {
    name: 'linear_stiffness',
    meaning: 'force per length at the load line',
    kind: 'linear-stiffness',
    symbol: 'k',
  },
  angular('stiffness_positive', 'stiffness under positive load alone'),
  angular('stiffness_negative', 'stiffness under negative load alone'),
  {
    name: 'compliance',
    meaning: 'motion per load at the loaded end, play and friction taken out',
    kind: 'angular-compliance',
    or: ['linear-compliance'],
    symbol: 'c',
  },
  motion('free_play', 'distance between the lines of both directions at zero load, friction taken out', {
    symbol: 'g',
    positive: true,
    source: PLAY_SOURCE,
  }),
  motion('hysteresis', 'mean width of the loop in deflection at equal load', { symbol: 'w', positive: true }),
  load('friction', 'half the width of the loop times the stiffness', { symbol: 'f', positive: true }),
  {
    name: 'nonlinearity',
    meaning:
      'bow of the curve over its chord, as a fraction of the deflection; positive: softer at high load; the more bent direction',
    kind: 'number',
  },
  angular('secant_at_limit', 'limit load over the deflection measured at it, play and friction included'),
  {
    name: 'repeatability',
    meaning: 'relative standard deviation of the stiffness between cycles',
    kind: 'number',
    positive: true,
  },
  { name: 'cycle_change', meaning: 'stiffness of the last cycle over the first, less 1', kind: 'number' },
  motion(
    'deflection_at_limit',
    'deflection under the limit load as measured, the direction that moved further',
    { symbol: 'a' },
  ),
  {
    name: 'travel_lost',
    meaning: 'movement under the limit load over the movement available from neutral',
    kind: 'number',
    symbol: 'D_e',
    source: 'AMC 22.411(a) (CS-22): 100 a/A in per cent',
  },
  load('reached_positive', 'greatest load in the positive direction'),
  load('reached_negative', 'greatest load in the negative direction, as a positive number'),
]

export const segment = (from: string, to: string): MeasureField[] => [
  {
    name: `compliance_${from}_${to}`,
    meaning: `compliance between ${from} and ${to}, in motion and load of the surface`,
    kind: 'angular-compliance',
    or: ['linear-compliance'],
  },
  {
    name: `share_${from}_${to}`,
    meaning: `share of the compliance that lies between ${from} and ${to}`,
    kind: 'number',
  },
]
