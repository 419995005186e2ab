import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'fuel-flow/falls',
  severity: 'error',
  title: 'The amount that was collected falls',
  page: `The column is what has run into the can so far, and only grows. Not what is left in the tank, and not what came since
the last reading.`,
  example: {
    wrong: `time  mass
s     kg
0     0.000
30    0.325
60    0.324`,
    right: `time  mass
s     kg
0     0.000
30    0.325
60    0.649`,
  },
}
export default code
