import { logOf, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/overload',
  severity: 'error',
  title: `A number is the mark of an overloaded input`,
  page: `Instruments send 9.9E37 for a value beyond their range and 9.91E37 for none (SCPI-1999). Such a number is no reading, and would spoil every mean.

List it as it stands in the file: \`missing: ["+9.90000000E+37"]\`.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  missing: ["+9.90000000E+37"]`,
    data: logOf('09:12:00;0.5;0.00', '09:12:01;+9.90000000E+37;5.51', '09:12:02;50.5;11.02'),
  },
}
export default code
