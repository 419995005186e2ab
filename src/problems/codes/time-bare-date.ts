import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'time/bare-date',
  severity: 'error',
  title: `A date without a time`,
  page: `A run or a decision has a time of day: it decides which calibration was in force, which card was valid and what came first. A bare date could mean any of 24 hours.

Add time and offset.`,
  example: {
    wrong: `when: 2026-03-04`,
    right: `when: 2026-03-04T09:12+01:00`,
  },
}
export default code
