import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/unknown-point',
  severity: 'error',
  title: 'A row names a point or item that the card does not',
  page: `The card names its \`points\` of support and the \`items\` that are added or taken off. A row that is weighed names a
point, a row with remove or add an item.`,
  example: {
    wrong: `point      action  reading
text       text    kg
left_mian  weigh   171.0`,
    right: `point      action  reading
text       text    kg
left_main  weigh   171.0`,
  },
}
export default code
