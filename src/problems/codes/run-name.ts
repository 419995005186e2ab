import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'run/name',
  severity: 'warning',
  title: `The name of the file and its time differ`,
  page: `A run is named by its time and card and lies in the folder of its month. A name that says another time is a copy that was not renamed, or a slip in \`when\`.

Rename the file, or correct \`when\`.`,
  example: {
    wrong: `when: 2026-03-04T10:12+01:00`,
    right: `when: 2026-03-04T09:12+01:00`,
  },
}
export default code
