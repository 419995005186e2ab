import { logOf, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/empty-cell',
  severity: 'error',
  title: `A cell of a data file is empty`,
  page: `An empty cell may be a reading that was missed, or a cell that slipped. It is not passed over without a word.

Where the logger leaves a cell empty for a missing value, list it: \`missing: [""]\`. The reading is then missing, as \`-\` is in a table.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  missing: [""]`,
    data: logOf('09:12:00;0,5;0,00', '09:12:01;;5,51', '09:12:02;50,5;11,02'),
  },
}
export default code
