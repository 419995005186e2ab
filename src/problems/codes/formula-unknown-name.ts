import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/unknown-name',
  severity: 'error',
  title: `A name in a formula is not known`,
  page: `Formulas know the measures of the method, derived measures and givens of the card. The nearest known names are given.

Correct the name.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "stifness > 4 N/mm", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
