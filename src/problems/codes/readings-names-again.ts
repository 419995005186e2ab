import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/names-again',
  severity: 'error',
  title: `The line of names stands in a data file once more`,
  page: `The logger was started again and went on in the same file. Its clock may have been set between, and so may its channels.

Take one of the logs, by lines: \`use: {from: line 1, to: line 900}\`.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  use: {to: line 4}`,
    data: `${LOG}Zeit;Kraft;Weg
09:20:00;0,5;0,00
`,
  },
}
export default code
