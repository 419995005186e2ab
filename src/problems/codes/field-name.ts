import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/name',
  severity: 'error',
  title: `A name that formulas could not use`,
  page: `Columns, givens, criteria and derived measures are named in formulas: small letters, digits and \`_\`, beginning with a letter.

Rename it.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `derive:
  Soft-ness: 1 / stiffness`,
    right: `derive:
  softness: 1 / stiffness`,
  },
}
export default code
