import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/double-column',
  severity: 'error',
  title: `A column stands twice`,
  page: `Two columns of one name: nobody can tell which one counts.

Rename or delete one of them.`,
  example: {
    wrong: `readings: |
  load   load  deflection
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
