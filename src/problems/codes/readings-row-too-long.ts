import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/row-too-long',
  severity: 'error',
  title: `A row has too many cells`,
  page: `Blanks separate cells; only a last column of words may hold blanks of its own.

Put words into a last column \`remark\` with the unit \`text\`.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02 creak`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
