import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/gearing-needed',
  severity: 'error',
  title: 'Stations with the cockpit loaded need the gearing',
  page: `The motion at the stations is given per motion of the surface. Where the cockpit is loaded, only the gearing leads
from the surface to the end at which load and deflection were read.

Add \`gearing\` (surface angle per cockpit angle) and, where force and length were read, \`arm\`.`,
  example: {
    wrong: `stations: [bellcrank]
given:
  loaded_end: cockpit
  ratio_bellcrank: 0.80 ± 0.01`,
    right: `stations: [bellcrank]
given:
  loaded_end: cockpit
  arm: 500 ± 2 mm
  gearing: 1.20 ± 0.02
  ratio_bellcrank: 0.80 ± 0.01`,
  },
}
export default code
