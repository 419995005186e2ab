import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/colon',
  severity: 'error',
  title: `A text holds a colon and a blank`,
  page: `YAML takes a colon with a blank behind it for the end of a field name, also in the midst of a sentence.

Put the whole text in quotes.`,
  example: {
    wrong: `stopped: step 4: pump failed`,
    right: `stopped: "step 4: pump failed"`,
  },
}
export default code
