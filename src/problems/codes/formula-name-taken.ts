import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/name-taken',
  severity: 'error',
  title: 'A formula is named like something else',
  page: `The name of a target or of a derived measure is already that of a measure, a unit or a function. In a formula one
name must mean one thing, or nobody can say which of the two a criterion speaks of.

Give the formula a name of its own.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `derive:
  stiffness: 2 * stiffness`,
    right: `derive:
  both_springs: 2 * stiffness`,
  },
}
export default code
