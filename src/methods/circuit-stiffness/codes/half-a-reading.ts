import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/half-a-reading',
  severity: 'warning',
  title: 'A load without a deflection, or the other way round',
  page: `A point of the loop is a load and a deflection. Where one of the two is missing the row stays in the record and is
left out of the fits; nothing is put in its place.`,
  example: {
    wrong: `load  deflection
N     mm
40    -`,
    right: `load  deflection
N     mm
40    2.31`,
  },
}
export default code
