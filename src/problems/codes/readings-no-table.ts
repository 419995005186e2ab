import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/no-table',
  severity: 'error',
  title: `This is no table of readings`,
  page: `A table is a block of text: names, units, then one row a line. Without the \`|\`, YAML joins all lines into one.

Write \`readings: |\` and indent the lines below.`,
  example: {
    wrong: `readings:
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
