import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/unknown',
  severity: 'error',
  title: `The method has no such given`,
  page: `Givens are never ignored: a misspelt one would be one that is not there.

Correct the name; the handbook lists the givens of the method.`,
  example: {
    wrong: `given: {drft_error: 0.3 K (u)}`,
    right: `given: {drift_error: 0.3 K (u)}`,
  },
}
export default code
