import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/units-count',
  severity: 'error',
  title: `Names and units do not pair`,
  page: `There is one unit for each name. A unit is written without blanks here: \`lbf·in\`.

Correct the line of units.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    lbf in mm
  0      0     0.00
  1      50.5  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
