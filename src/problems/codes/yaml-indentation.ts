import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/indentation',
  severity: 'error',
  title: `A line stands in the wrong column`,
  page: `In YAML the column says what belongs together. A line of a table that is not indented is no part of the table; a field that is indented belongs to the one above.

Bring the line into the column of its neighbours.`,
  example: {
    wrong: `by: [moduya]
 witness: [rlind]`,
    right: `by: [moduya]
witness: [rlind]`,
  },
}
export default code
