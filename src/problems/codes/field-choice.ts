import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/choice',
  severity: 'error',
  title: `A word is not among those that are known`,
  page: `Some fields know a few words only, because something is decided by them.

Take one of the words that are listed.`,
  example: {
    in: 'records/items/horn-play.md',
    wrong: `kind: discrepency`,
    right: `kind: discrepancy`,
  },
}
export default code
