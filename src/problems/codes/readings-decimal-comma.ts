import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/decimal-comma',
  severity: 'error',
  title: `A cell has a decimal comma`,
  page: `The decimal sign in a table is the point. In a data file it is the same sign in all columns.

Write a point; for a data file say which sign it is, \`decimal: ","\`.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50,5  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
