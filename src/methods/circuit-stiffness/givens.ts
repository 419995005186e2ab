/** What is known, set or chosen before the test. */
import type { Given } from '../method.ts'

const POSITIVE = { low: Number.MIN_VALUE }

export const givens: readonly Given[] = [
  {
    name: 'loaded_end',
    meaning: 'where the load is applied and the deflection read',
    kind: 'text',
    role: 'choice',
    required: true,
    choices: ['surface', 'cockpit'],
  },
  {
    name: 'locked_at',
    meaning: 'what holds the other end of the circuit, and how',
    kind: 'text',
    role: 'words',
    required: true,
  },
  {
    name: 'limit_load',
    meaning: 'load that must be reached in each direction',
    kind: 'force',
    or: ['moment'],
    symbol: 'F_L',
    role: 'setpoint',
    required: true,
    range: POSITIVE,
    source:
      '14 CFR 23.683 (before amendment 64): limit air load or pilot force of 23.397(b), whichever is less',
  },
  {
    name: 'arm',
    meaning:
      'distance from the load line to the pivot, needed where a force or a length was read and an angular result is wanted',
    kind: 'length',
    symbol: 'r',
    role: 'known',
    required: false,
    range: POSITIVE,
  },
  {
    name: 'load_angle',
    meaning: 'angle by which the pull is off the square to the arm; taken as 0 where not given',
    kind: 'angle',
    symbol: 'α',
    role: 'known',
    required: false,
    range: { low: -1.5, high: 1.5 },
  },
  {
    name: 'gearing',
    meaning: 'surface angle per cockpit angle, needed for the surface stiffness where the cockpit is loaded',
    kind: 'number',
    symbol: 'G',
    role: 'known',
    required: false,
    range: POSITIVE,
  },
  {
    name: 'full_travel',
    meaning: 'movement available at the loaded end from neutral to the stop, needed for the travel lost',
    kind: 'angle',
    or: ['length'],
    symbol: 'A',
    role: 'known',
    required: false,
    range: POSITIVE,
    source: 'AMC 22.411(a) (CS-22)',
  },
  {
    name: 'fixture_compliance',
    meaning:
      'motion of the fixture per load, seen at the loaded end, where it was measured before and not in the run',
    kind: 'angular-compliance',
    or: ['linear-compliance'],
    symbol: 'c_f',
    role: 'known',
    required: false,
    range: { low: 0 },
  },
]

export const ratio = (station: string): Given => ({
  name: `ratio_${station}`,
  meaning:
    station === 'fixture'
      ? 'motion at the fixture per motion of the surface; without it the fixture motion is taken off as read'
      : `motion of the station ${station} per motion of the surface`,
  kind: 'number',
  or: ['length-per-angle'],
  role: 'known',
  required: station !== 'fixture',
  range: POSITIVE,
})
