import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'instrument/corrections',
  severity: 'error',
  title: `A table of corrections cannot be used`,
  page: `Corrections have the columns \`reading\` (what the instrument shows, rising) and \`add\` (what to add to it). Between the rows they are interpolated, so none may be missing.

Correct the table.`,
  example: {
    in: 'shared/instruments/fg-01.md',
    wrong: `calibrations:
  - on: 2025-11-03
    due: 2026-11-03
    by: Invented laboratory
    certificate: C-17
    corrections: |
      reading  add
      N        N
      0        0
      250      -`,
    right: `calibrations:
  - on: 2025-11-03
    due: 2026-11-03
    by: Invented laboratory
    certificate: C-17
    corrections: |
      reading  add
      N        N
      0        0
      250      0.3`,
  },
}
export default code
