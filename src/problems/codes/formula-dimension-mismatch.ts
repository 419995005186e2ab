import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/dimension-mismatch',
  severity: 'error',
  title: `Quantities of different kinds are added or compared`,
  page: `A stiffness can be compared with a stiffness only. The message names both kinds.

Correct the unit or the formula.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "stiffness > 4 N", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
