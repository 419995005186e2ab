import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'run/article',
  severity: 'error',
  title: `Which article was tested is not clear`,
  page: `The card serves several articles, and the run does not say which one it was; or it names one that the card does not serve.

Add \`article: …\` with one of those that are listed.`,
  example: {
    wrong: `article: wing-middle`,
    right: `article: wing-left`,
  },
}
export default code
