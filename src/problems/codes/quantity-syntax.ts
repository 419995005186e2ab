import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/syntax',
  severity: 'error',
  title: `A quantity cannot be read`,
  page: `A quantity is a number and its unit, with ± and an uncertainty where it is known.

Write it so: \`96.4 ± 0.6 L\`.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: 120.0 ± mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
