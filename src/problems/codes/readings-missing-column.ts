import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/missing-column',
  severity: 'error',
  title: `A column that the method needs is missing`,
  page: `Without it the measures of the method cannot be computed.

Add the column.`,
  example: {
    wrong: `readings: |
  time  load
  min   N
  0     0`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
