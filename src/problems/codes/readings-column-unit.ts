import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/column-unit',
  severity: 'error',
  title: `Nothing says the unit of a column of a data file`,
  page: `The file has no line of units, or none for this column. A unit in the name of a column is not taken by itself: names are often left as they were when a channel was set up anew.

Write \`unit: …\` beside \`from\`.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: "Weg [mm]"}`,
    right: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: "Weg [mm]", unit: mm}`,
    data: `Zeit;Kraft;Weg [mm]
09:12:00;0,5;0,00
09:12:01;50,5;11,02
`,
  },
}
export default code
