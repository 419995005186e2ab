import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/time-order',
  severity: 'error',
  title: 'The time goes back',
  page: `Rows are kept in the order in which they were read and never sorted. A time that is earlier than that of the row
before is a slip of the pen, or a clock that was set anew; the latter needs a new run. Two rows of one time are kept: many
a logger writes whole seconds, whatever its rate.`,
  example: {
    wrong: `0     -2653     18.42        1009.8
10    -2651     18.44        1009.8
5     -2650     18.45        1009.8`,
    right: `0     -2653     18.42        1009.8
5     -2651     18.44        1009.8
10    -2650     18.45        1009.8`,
  },
}
export default code
