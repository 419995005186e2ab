import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'inspection/unknown-entry',
  severity: 'error',
  title: 'The card has no such entry',
  page: `The list is the card's, not the run's: an entry that the card does not know would never be asked for again. Add it to
the card, or mend its name.`,
  example: {
    wrong: `entry    as_left
text     text
webing   ok`,
    right: `entry    as_left
text     text
webbing  ok`,
  },
}
export default code
