import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/names',
  severity: 'error',
  title: 'The names of points or items cannot be used',
  page: `\`points\` and \`items\` are lists of different names, of lower case letters, digits and \`_\`. Givens and measures are named
after them: \`arm_left_main\`, \`at_left_main\`.`,
  example: {
    wrong: `points: [left_main, left_main, nose]`,
    right: `points: [left_main, right_main, nose]`,
  },
}
export default code
