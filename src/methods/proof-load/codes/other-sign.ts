import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-load/other-sign',
  severity: 'error',
  title: 'The load goes the other way than the target',
  page: `The sign of a load is its direction. A positive factor of the ground gust rule moves the surface down, a negative one up;
the target has that sign, and the readings have the sign of the target.

Write the readings with the sign of the target, or mend the load case on the card. A surface that was loaded the other way
needs a new run.`,
  example: {
    wrong: `0     0     0.00
15    -45.2 -2.81
17    -45.6 -2.95`,
    right: `0     0     0.00
15    45.2  2.81
17    45.6  2.95`,
  },
}
export default code
