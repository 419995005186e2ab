import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/empty-value',
  severity: 'error',
  title: `A field has no value`,
  page: `A field that is left out is not known; an empty one may be forgotten, lost in an edit, or meant as none. Nobody can tell.

Write a value, or delete the field.`,
  example: {
    wrong: `stopped:`,
    right: `stopped: pump failed`,
  },
}
export default code
