import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'mass-balance/moved-point',
  severity: 'error',
  title: 'Repeats of one point have different arms',
  page: `Rows of one point are repeats and are averaged. A scale at another arm carries another load: that is another run. Two
scales that carry at the same time have two names.`,
  example: {
    wrong: `point          reading  arm
text           g        mm
trailing_edge  60       400
trailing_edge  80       300`,
    right: `point          reading  arm
text           g        mm
trailing_edge  60       400
trailing_edge  61       400`,
  },
}
export default code
