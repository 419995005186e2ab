import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/decimal-comma',
  severity: 'error',
  title: `A cell has a decimal comma`,
  page: `The decimal sign in a table is the point.

Write a point.`,
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
