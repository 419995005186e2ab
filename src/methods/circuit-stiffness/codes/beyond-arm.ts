import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/beyond-arm',
  severity: 'error',
  title: 'The deflection is as long as the arm',
  page: `The angle is the arc sine of deflection over arm. A deflection as long as the arm, or longer, has no angle. Mostly
one of the two carries the wrong unit.`,
  example: {
    wrong: `given: {arm: 420 ± 1 mm}
readings: |
  load  deflection
  N     m
  20    1.3`,
    right: `given: {arm: 420 ± 1 mm}
readings: |
  load  deflection
  N     mm
  20    1.3`,
  },
}
export default code
