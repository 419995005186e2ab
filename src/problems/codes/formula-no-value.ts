import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/no-value',
  severity: 'error',
  title: `A formula has no value here`,
  page: `A division by zero, a root of a negative number, or a function outside its range gives no number, and no verdict is made of it.

Correct the formula or the value that leads there.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "stiffness / (0 N/mm) > 4", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
