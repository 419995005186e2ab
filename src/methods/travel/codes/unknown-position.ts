import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/unknown-position',
  severity: 'error',
  title: 'A row names a position that the card does not',
  page: `Rows name the positions of the card, or \`neutral\`.`,
  example: {
    wrong: `position  angle
text      deg
upp       25.2`,
    right: `position  angle
text      deg
up        25.2`,
  },
}
export default code
