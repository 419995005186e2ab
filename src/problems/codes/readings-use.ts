import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/use',
  severity: 'error',
  title: `The part of a log to be used cannot be told`,
  page: `\`use: {from: 120 s, to: 30 min}\` counts from the first sample; \`10:15:00\` is the first such time of day after it; \`line 12\` is a line of the file.

Write one of these, so that at least one row lies within.`,
  example: {
    wrong: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}
  use: {from: 2 h}`,
    right: `readings:
  file: 2026-03-04-0912-spring-pull.csv
  columns:
    time: {from: Zeit, format: "HH:mm:ss"}
    load: {from: Kraft, unit: N}
    deflection: {from: Weg, unit: mm}
  use: {from: 1 s}`,
    data: `Zeit;Kraft;Weg
hh:mm:ss;N;mm
09:12:00;0,5;0,00
09:12:01;50,5;11,02
`,
  },
}
export default code
