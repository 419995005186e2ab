import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/other-line',
  severity: 'error',
  title: 'An indicator of the other line',
  page: `An altimeter hangs on the static line, an airspeed indicator with its static side open on the pitot line. \`side\` on the
card says which line is closed.`,
  example: {
    wrong: `side: pitot`,
    right: `side: static`,
  },
}
export default code
