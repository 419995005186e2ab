import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/no-side',
  severity: 'error',
  title: 'A row does not say which side was read',
  page: `Where the column \`side\` is there, each row says left or right. For one surface leave the column out.`,
  example: {
    wrong: `position  side  angle
text      text  deg
up        -     25.2`,
    right: `position  side  angle
text      text  deg
up        left  25.2`,
  },
}
export default code
