import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/time-format',
  severity: 'error',
  title: `A format of times cannot be understood`,
  page: `A format is made of \`YYYY MM DD HH mm ss\`, \`MMM\` for \`Mar\`, \`h\` with \`A\` for AM and PM, \`Z\` for an offset from UTC, and the signs between them; or it is \`ISO\`, \`epoch s\`, \`epoch ms\`. Fractions of a second behind \`ss\` are understood. A time of day alone may pass midnight.

Write the format as the file has it; \`npm run look -- <file>\` finds most of them.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "hh:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}`,
    right: READINGS,
    data: LOG,
  },
}
export default code
