import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/not-allowed',
  severity: 'error',
  title: `Something that formulas do not have`,
  page: `Formulas have no assignment, no texts, no lists and no programs: they can be read by anyone and always end.

Take it out.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "x = stiffness", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
