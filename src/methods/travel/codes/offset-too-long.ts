import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/offset-too-long',
  severity: 'error',
  title: 'An offset cannot be had at this radius',
  page: `A chord is at most twice the radius, an offset square to neutral at most the radius. Mostly a unit, or a chord taken for
the other (\`offset_as\`).`,
  example: {
    wrong: `position  offset
text      mm
left      1750`,
    right: `position  offset
text      mm
left      175`,
  },
}
export default code
