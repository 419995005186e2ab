import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'history/revision',
  severity: 'warning',
  title: 'The revision of the card in hand is not known here',
  page: `\`card-revision\` says which state of the card was in hand: a commit, by its hash or the first seven or more characters of it. The history of this repository has no such commit, or more than one begins so. The card is then taken as it was on the main line at the time of the run.

Copy the revision from the title block of the sheet, or take the line out.`,
  example: {
    wrong: `card-revision: c0ffee`,
    right: `card-revision: 3f2a91c`,
  },
}
export default code
