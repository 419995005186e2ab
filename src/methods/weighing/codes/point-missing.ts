import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/point-missing',
  severity: 'error',
  title: 'A point of support has no reading',
  page: `Each of the card’s \`points\` needs a reading: what stands on a point that was left out is missing in weight and balance.`,
  example: {
    wrong: `point       reading
text        kg
left_main   171.0
right_main  170.0`,
    right: `point       reading
text        kg
left_main   171.0
right_main  170.0
nose        70.5`,
  },
}
export default code
