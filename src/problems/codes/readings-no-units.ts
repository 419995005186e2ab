import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/no-units',
  severity: 'error',
  title: `The line of units is missing`,
  page: `Below the names stands one unit a column. A table without it could be in any unit.

Add the line.`,
  example: {
    wrong: `readings: |
  time   load  deflection
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
