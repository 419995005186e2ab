import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/missing',
  severity: 'error',
  title: `A field is missing`,
  page: `Some fields every record of a kind must have; without them it cannot be placed, judged or signed.

Add the field.`,
  example: {
    wrong: `fitted: [{id: pin}]`,
    right: `fitted: [{id: pin, what: rigging pin}]`,
  },
}
export default code
