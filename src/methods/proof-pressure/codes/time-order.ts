import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-pressure/time-order',
  severity: 'error',
  title: 'The time does not go on',
  page: `The hold is counted along the clock, so rows keep the order in which they were read. A time that lies before that of
the row above is a slip of the pen, or a clock that was set anew; the latter needs a new run.`,
  example: {
    wrong: `0     0      0.00
15    7000   3.50
10    7000   3.51`,
    right: `0     0      0.00
15    7000   3.50
20    7000   3.51`,
  },
}
export default code
