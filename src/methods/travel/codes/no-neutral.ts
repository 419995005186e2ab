import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/no-neutral',
  severity: 'error',
  title: 'Angles are counted from neutral, and neutral was not read',
  page: `With \`counted_from: neutral\` the mean of the rows at neutral is subtracted. With the level set to zero there, give
\`counted_from: zero\`.`,
  example: {
    wrong: `position  angle
text      deg
up        26.1`,
    right: `position  angle
text      deg
neutral   1.1
up        26.1`,
  },
}
export default code
