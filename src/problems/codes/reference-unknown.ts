import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'reference/unknown',
  severity: 'error',
  title: `What a record refers to is not there`,
  page: `Cards, articles, parts, instruments, people, gates, runs and measures are named by id. A name that leads nowhere is a slip of the pen, or a file that is not there yet.

Correct the name, or add the file.`,
  example: {
    wrong: `by: [mduya]`,
    right: `by: [moduya]`,
  },
}
export default code
