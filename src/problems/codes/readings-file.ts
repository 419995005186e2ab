import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/file',
  severity: 'error',
  title: `A data file cannot be taken`,
  page: `The data file of a run lies beside it under the same name, and ends in csv, tsv, txt, dat or log.

Rename it, and put it beside the run.`,
  example: {
    wrong: `readings: {file: log.csv}`,
    right: `readings: |
  time   load  deflection
  min    N     mm
  0      0     0.00
  1      50.5  11.02`,
  },
}
export default code
