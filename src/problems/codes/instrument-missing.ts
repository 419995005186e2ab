import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'instrument/missing',
  severity: 'error',
  title: `A reading without its instrument`,
  page: `Resolution, accuracy and calibration come from the instrument; without it the uncertainty of the reading is not known.

Name the instrument of the column.`,
  example: {
    wrong: `instruments: {deflection: dg-02}`,
    right: `instruments: {load: fg-01, deflection: dg-02}`,
  },
}
export default code
