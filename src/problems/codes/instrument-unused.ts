import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'instrument/unused',
  severity: 'warning',
  title: `An instrument for a column that was not read`,
  page: `The run names an instrument for a column that its table does not have.

Add the column, or take the instrument out.`,
  example: {
    wrong: `instruments: {load: fg-01, deflection: dg-02, temperature: dg-02}`,
    right: `instruments: {load: fg-01, deflection: dg-02}`,
  },
}
export default code
