import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/no-temperature',
  severity: 'error',
  title: 'No temperature was read',
  page: `The line is a closed volume of gas: 1 K of it moves the altimeter by as much as 96 ft near the sea, nearly all that the
rule allows in a minute.

Read \`temperature\` at the line. Where that cannot be, say \`temperature: not measured\` on the card and give as
\`temperature_error\` the standard uncertainty of the change of the gas temperature itself: the result then carries it.`,
  example: {
    wrong: `time  altitude
s     ft
0     1060`,
    right: `time  altitude  temperature
s     ft        °C
0     1060      18.4`,
  },
}
export default code
