import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/not-a-number',
  severity: 'error',
  title: `A cell is no number`,
  page: `A cell holds a number, \`-\` or \`n/a\` where there is none, or a word that the run lists (\`missing: [OL]\`). The unit stands once, below the name.

Correct the cell.`,
  example: {
    wrong: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      fifty  11.02`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
