import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-pressure/other-side',
  severity: 'error',
  title: 'The readings are on the other side of ambient',
  page: `A gauge pressure is negative below ambient, in the target and in the readings. A lost minus sign would make a suction
test one of pressure.`,
  example: {
    wrong: `time  pressure
s     Pa
60    2500`,
    right: `time  pressure
s     Pa
60    -2500`,
  },
}
export default code
