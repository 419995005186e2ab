import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/tag',
  severity: 'error',
  title: `A YAML tag`,
  page: `What begins with \`!\` tells a YAML reader to make something else of the value, and most then lose the text: \`verdict: !pass\` reads as empty.

Leave the tag out, or put the text in quotes.`,
  example: {
    wrong: `stopped: !pump failed`,
    right: `stopped: "!pump failed"`,
  },
}
export default code
