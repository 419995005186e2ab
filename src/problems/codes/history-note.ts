import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'history/note',
  severity: 'warning',
  title: 'Something in the history is left out',
  page: `The history was read, but a part of it is not believed or cannot be had: a file with reviews that is itself tracked (anybody could have written it), commits whose clocks run backwards, texts that are kept elsewhere.

The message says what was left out and what that means. Nothing rests on it.`,
  example: {
    wrong: 'title: Invented campaign, with a file of reviews in the repository',
    right: 'title: Invented campaign, with that file left to the step that fetches it',
    in: 'shared/campaign.yaml',
  },
}
export default code
