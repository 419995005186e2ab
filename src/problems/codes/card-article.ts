import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'card/article',
  severity: 'error',
  title: `The card does not say what it is for`,
  page: `A card of one article has \`article: …\`; one of several has \`articles:\` with a line each; never both.

Write one of the two.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `article: wing-left`,
    right: `covers: [spring]`,
  },
}
export default code
