import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/needs-quotes',
  severity: 'error',
  title: `A text begins with a sign that YAML keeps for itself`,
  page: `A text that begins with \`@\`, \`%\`, \`*\`, \`&\`, \`!\`, \`|\`, \`>\` or a quote means something else to YAML.

Put the whole text in quotes.`,
  example: {
    wrong: `stopped: @rlind said so`,
    right: `stopped: "@rlind said so"`,
  },
}
export default code
