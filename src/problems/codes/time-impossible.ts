import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'time/impossible',
  severity: 'error',
  title: `A day, time or offset that does not exist`,
  page: `There is no 30 February, no hour 25 and no offset of 15 hours. Some programs roll such dates over into the next month without a word.

Correct it.`,
  example: {
    wrong: `when: 2025-13-45T09:12+01:00`,
    right: `when: 2026-03-04T09:12+01:00`,
  },
}
export default code
