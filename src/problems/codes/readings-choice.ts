import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/choice',
  severity: 'error',
  title: `A word that the column does not know`,
  page: `Some columns know a few words only, because something is decided by them.

Take one of the words that are listed.`,
  example: {
    wrong: `readings: |
  load  deflection  branch
  N     mm          text
  0     0.00        upp`,
    right: `readings: |
  load  deflection  branch
  N     mm          text
  0     0.00        up`,
  },
}
export default code
