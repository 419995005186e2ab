import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/use',
  severity: 'error',
  title: `The part of a log to be used cannot be told`,
  page: `\`use: {from: 120 s, to: 30 min}\` counts from the first sample; \`10:15:00\` is the first such time of day after it; \`line 12\` is a line of the file.

Write one of these, so that at least one row lies within.`,
  example: {
    wrong: `${READINGS}
  use: {from: 2 h}`,
    right: `${READINGS}
  use: {from: 1 s}`,
    data: LOG,
  },
}
export default code
