import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/arguments',
  severity: 'error',
  title: `A function has other arguments than it takes`,
  page: `Each function takes a fixed number of arguments of fixed kinds; the handbook shows an example of each.

Give it what it takes.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "sqrt(stiffness, 2) > 4", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
