import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/unknown',
  severity: 'error',
  title: `A field is not known`,
  page: `Unknown fields are never ignored: a misspelt field would be a field that is not there. The nearest known names are given.

Correct the name, or put the remark into the prose.`,
  example: {
    wrong: `witnes: [rlind]`,
    right: `witness: [rlind]`,
  },
}
export default code
