import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/row-too-short',
  severity: 'error',
  title: `A row has too few cells`,
  page: `A value is missing somewhere in the row, and nobody can tell under which column.

Write \`-\` where a reading was not taken.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
