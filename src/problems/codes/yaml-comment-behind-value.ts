import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/comment-behind-value',
  severity: 'error',
  title: `A comment stands behind a value`,
  page: `In YAML a \`#\` behind a blank begins a comment: \`tank: left #2\` reads as \`left\`, and the number is lost without a word. So a comment stands on a line of its own or not at all.

Put the whole text in quotes if the \`#\` belongs to it; else move the comment to its own line.`,
  example: {
    wrong: `stopped: pump #2 failed`,
    right: `stopped: "pump #2 failed"`,
  },
}
export default code
