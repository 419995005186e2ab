import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/no-rows',
  severity: 'error',
  title: `A table without a row`,
  page: `There are names and units, and nothing was read.

Add the rows; where the test was broken off before the first reading, say \`stopped: …\`.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
