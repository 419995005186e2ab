import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/quote',
  severity: 'error',
  title: `A quote in a data file is not closed`,
  page: `A cell that begins with \`"\` ends with one; a quote inside is doubled. An open quote would swallow the rest of the file.

Close it, or delete it.`,
  example: {
    wrong: READINGS,
    right: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: "3", unit: mm}
  use: {to: line 4}`,
    data: `${LOG}09:12:02;"60,0;12,00
`,
  },
}
export default code
