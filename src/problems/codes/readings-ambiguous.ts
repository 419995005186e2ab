import { logOf, READINGS } from '../example-log.ts'
import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'readings/ambiguous',
  severity: 'error',
  title: `A sign in a data file can be read in two ways`,
  page: `A comma may be a decimal sign, stand between thousands, or part two cells. What the file itself does not settle is asked and not guessed: a factor of a thousand would look like any other reading.

Say which it is: \`decimal: ","\`, \`delimiter: ";"\`. Where a file uses one sign for two things, set the export to another.`,
  example: {
    wrong: READINGS,
    right: `${READINGS}
  decimal: ","`,
    data: logOf('09:12:00;1,234;1,102', '09:12:01;2,345;2,204'),
  },
}
export default code
