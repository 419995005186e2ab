import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'mass-balance/no-arm',
  severity: 'error',
  title: 'A row has a reading and no arm',
  page: `A load makes a moment about the hinge only with its arm. Write it into every row, and 0 for a scale under a hinge.`,
  example: {
    wrong: `point          reading  arm
text           g        mm
trailing_edge  60       -`,
    right: `point          reading  arm
text           g        mm
trailing_edge  60       400`,
  },
}
export default code
