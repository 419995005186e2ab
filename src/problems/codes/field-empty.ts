import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/empty',
  severity: 'error',
  title: `A text or a list is empty`,
  page: `An empty text in quotes, or an empty list where at least one entry is needed, says nothing.

Write a value, or delete the field if it may be left out.`,
  example: {
    wrong: `by: []`,
    right: `by: [moduya]`,
  },
}
export default code
