import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/positions',
  severity: 'error',
  title: 'The positions of the card cannot be read',
  page: `\`positions\` gives each position its \`nominal\` angle, signed as the readings are, and a \`tolerance\`, or \`plus\` (beyond)
and \`minus\` (short of it), both without a sign. Measures are named after them: \`up\`, \`up_error\`, \`up_left_margin\`.`,
  example: {
    wrong: `positions:
  up: {tolerance: 2 deg}`,
    right: `positions:
  up: {nominal: 25 deg, tolerance: 2 deg}`,
  },
}
export default code
