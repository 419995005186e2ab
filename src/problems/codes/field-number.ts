import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/number',
  severity: 'error',
  title: `A number is not as expected`,
  page: `A count is a whole number from 1; an order is a plain number; a size is a number with its unit.

Correct the number.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `runs-per-round: many`,
    right: `runs-per-round: 2`,
  },
}
export default code
