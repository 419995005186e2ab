import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/cycle',
  severity: 'error',
  title: `Formulas need each other in a ring`,
  page: `A derived measure or a target that in the end needs itself has no value.

Take one of the references of the ring out.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `derive:
  a: b * 2
  b: a / 2`,
    right: `derive:
  a: stiffness * 2
  b: a / 2`,
  },
}
export default code
