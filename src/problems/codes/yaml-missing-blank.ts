import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/missing-blank',
  severity: 'error',
  title: `A blank is missing after the colon`,
  page: `Without a blank after it, YAML takes the colon for a part of the text, as in \`09:12\`.

Put a blank after the colon.`,
  example: {
    wrong: `stopped:pump failed
witness: [rlind]`,
    right: `stopped: pump failed
witness: [rlind]`,
  },
}
export default code
