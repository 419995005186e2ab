import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/shape',
  severity: 'error',
  title: `A given has another shape than expected`,
  page: `A given is a quantity or a word, a value with the instrument that measured it, or the result of another run.

Write it in one of these forms.`,
  example: {
    wrong: `given: {drift_error: {val: 0.3 K}}`,
    right: `given: {drift_error: {value: 0.3 K (u)}}`,
  },
}
export default code
