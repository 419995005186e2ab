import { LOG, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/not-text',
  severity: 'error',
  title: `A data file is no text, or not all of it`,
  page: `The file holds zero bytes, or ends in the middle of a sign: it is a workbook or an archive, or was cut off while it was written or copied. UTF-8, UTF-16 and Windows-1252 are understood.

Export the readings as text, or copy the file from the logger once more. Where it cannot be had again, end before the damage: \`use: {to: line 900}\`.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  use: {to: line 4}`,
    data: `${LOG}09:12:02;\0\0\0\0;\0\0\0
`,
  },
}
export default code
