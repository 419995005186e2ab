import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/thousands',
  severity: 'error',
  title: `A number has separators between its figures`,
  page: `\`1 234\`, \`1'234\` or \`1.234,5\` are numbers for a reader and not for a machine: the same signs part decimals elsewhere.

Export the file without separators between thousands. Where the sign is the decimal sign, say so: \`decimal: ","\`.`,
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
  missing: ["1.234,5"]`,
    data: `Zeit;Kraft;Weg
hh:mm:ss;N;mm
09:12:00;0,5;0,00
09:12:01;1.234,5;5,51
09:12:02;50,5;11,02
`,
  },
}
export default code
