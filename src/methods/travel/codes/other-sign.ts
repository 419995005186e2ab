import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/other-sign',
  severity: 'error',
  title: 'An angle lies on the other side of neutral than its nominal',
  page: `One sign stands for one direction, on the card and in the readings. Many levels show no sign: write it. If the surface
did move the wrong way, the controls are reversed: stop.`,
  example: {
    wrong: `position  angle
text      deg
down      19.6`,
    right: `position  angle
text      deg
down      -19.6`,
  },
}
export default code
