import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/not-a-criterion',
  severity: 'error',
  title: `A criterion does not compare`,
  page: `A criterion compares a value with its limit, so that it can be met or not.

Add the comparison.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "stiffness", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
