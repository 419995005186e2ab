import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/not-a-time',
  severity: 'error',
  title: `A cell is no time of day`,
  page: `A column with the unit \`hh:mm\` holds times such as \`09:12\`, with \`hh:mm:ss\` such as \`09:12:30\`.

Correct the cell.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  hh:mm  N     mm
  09:12  0     0.00
  9.13   50.5  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
