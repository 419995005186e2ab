import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/two-indicators',
  severity: 'error',
  title: 'The line is read twice',
  page: `Two indicators on one line do not show the same, and the verdict must rest on one. Keep the finer one as the column.`,
  example: {
    wrong: `time  altitude  pressure
s     ft        Pa
0     1060      -3820`,
    right: `time  altitude
s     ft
0     1060`,
  },
}
export default code
