import { logOf, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/thousands',
  severity: 'error',
  title: `A number has separators between its figures`,
  page: `\`1 234\`, \`1'234\` or \`1.234,5\` are numbers for a reader and not for a machine: the same signs part decimals elsewhere.

Export the file without separators between thousands. Where the sign is the decimal sign, say so: \`decimal: ","\`.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  missing: ["1.234,5"]`,
    data: logOf('09:12:00;0,5;0,00', '09:12:01;1.234,5;5,51', '09:12:02;50,5;11,02'),
  },
}
export default code
