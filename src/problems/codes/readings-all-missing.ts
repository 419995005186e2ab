import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/all-missing',
  severity: 'error',
  title: `A column that the method needs has no value`,
  page: `Every cell of the column is missing. Such a run cannot be computed.

Give the readings, or say \`stopped: …\` and leave the table at what was read.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm
  0      0     -
  1      50.5  -`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
