import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-pressure/base-alone',
  severity: 'error',
  title: 'A base without its dial',
  page: `\`base_2\` is the movement of what the dial of \`station_2\` stands on, and is taken off its readings. It needs a station
of the same name.`,
  example: {
    wrong: `time  pressure  station_1  base_2
s     Pa        mm         mm`,
    right: `time  pressure  station_1  base_1
s     Pa        mm         mm`,
  },
}
export default code
