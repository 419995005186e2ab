import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/time-order',
  severity: 'error',
  title: 'The time does not go on',
  page: `Rows are kept in the order in which they were read and never sorted. A time that is not later than that of the row before
is a slip of the pen, or a clock that was set anew; the latter needs a new run.`,
  example: {
    wrong: `0     1060
20    1052
10    1056`,
    right: `0     1060
10    1056
20    1052`,
  },
}
export default code
