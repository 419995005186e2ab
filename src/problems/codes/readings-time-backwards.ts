import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/time-backwards',
  severity: 'error',
  title: `A time is earlier than the one above it`,
  page: `Rows keep their order and are never sorted. Only a step over midnight, by more than half a day, may go back.

Correct the time, or put the rows in the order in which they were read.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  hh:mm  N     mm
  09:12  0     0.00
  09:02  50.5  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
