import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/unknown-function',
  severity: 'error',
  title: `A function is not known`,
  page: `Only the functions of the handbook can be called. The nearest known names are given.

Correct the name.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "squareroot(stiffness) > 4", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
