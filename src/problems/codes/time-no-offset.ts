import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'time/no-offset',
  severity: 'error',
  title: `A time without its offset from UTC`,
  page: `Without the offset, \`09:12\` is another moment in summer, in winter and on another machine.

Add the offset, \`Z\` for UTC.`,
  example: {
    wrong: `when: 2026-03-04T09:12`,
    right: `when: 2026-03-04T09:12+01:00`,
  },
}
export default code
