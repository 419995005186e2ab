import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/no-arm',
  severity: 'warning',
  title: 'The arm of a point or item is missing',
  page: `Weight can be had without arms, a centre of gravity cannot. Give \`arm_<point>\` on the card, or measure the arms on the
day in a column \`arm\`.`,
  example: {
    wrong: `given:
  arm_left_main: 1.80 m ± 2 mm`,
    right: `given:
  arm_left_main: 1.80 m ± 2 mm
  arm_nose: 0.60 m ± 2 mm`,
  },
}
export default code
