import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/file-column',
  severity: 'error',
  title: `A data file has no such column`,
  page: `\`from\` names a column as it stands in the file's line of names. Where a file has no such line, or two columns of one name, the number of the column stands there instead.

Write the name or the number. \`npm run look -- <file>\` prints both.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Krafft, unit: N}
    deflection: {from: Weg, unit: mm}`,
    right: READINGS,
    data: LOG,
  },
}
export default code
