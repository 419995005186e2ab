import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'time/syntax',
  severity: 'error',
  title: `This is no date or time`,
  page: `Times are written as in RFC 3339, seconds may be left out: \`2026-03-04T09:12+01:00\`. Days are written \`2026-03-04\`.

Write it so.`,
  example: {
    wrong: `when: 4 March 2026`,
    right: `when: 2026-03-04T09:12+01:00`,
  },
}
export default code
