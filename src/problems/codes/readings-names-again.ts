import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/names-again',
  severity: 'error',
  title: `The line of names stands in a data file once more`,
  page: `The logger was started again and went on in the same file. Its clock may have been set between, and so may its channels.

Take one of the logs, by lines: \`use: {from: line 1, to: line 900}\`.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}`,
    right: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}
  use: {to: line 4}`,
    data: `Zeit;Kraft;Weg
hh:mm:ss;N;mm
09:12:00;0,5;0,00
09:12:01;50,5;11,02
Zeit;Kraft;Weg
09:20:00;0,5;0,00
`,
  },
}
export default code
