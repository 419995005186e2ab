import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'value/out-of-range',
  severity: 'error',
  title: `A value outside the range of the method`,
  page: `Outside this range the equations of the method do not hold, or the value is a slip of a decimal point or a sign.

Correct the value; the handbook gives the range and its source.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: -120.0 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
