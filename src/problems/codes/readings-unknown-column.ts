import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/unknown-column',
  severity: 'error',
  title: `The method has no such column`,
  page: `Columns are never ignored: a misspelt one would be one that is not there.

Correct the name; words beside the readings belong in a last column \`remark\`.`,
  example: {
    wrong: `readings: |
  tyme   load  deflection
  min    N     mm
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
