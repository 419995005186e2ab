import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/wrong-unit',
  severity: 'error',
  title: `Words where numbers are expected, or the reverse`,
  page: `The unit \`text\` marks a column of words. A column that the method computes with needs a unit; a column of words needs \`text\`.

Correct the unit.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  text   N     mm
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
