import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/not-closed',
  severity: 'error',
  title: `A bracket or a quote is not closed`,
  page: `What is opened on one line swallows the lines below it until it is closed.

Write the closing sign.`,
  example: {
    wrong: `by: [moduya
witness: [rlind]`,
    right: `by: [moduya]
witness: [rlind]`,
  },
}
export default code
