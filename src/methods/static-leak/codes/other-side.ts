import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/other-side',
  severity: 'error',
  title: 'A pressure on the other side of ambient',
  page: `The sign is part of the pressure: the static line is drawn below ambient (negative), the pitot line blown above it. A pitot
line that was really drawn below static may have over-run the airspeed indicator.`,
  example: {
    wrong: `time  pressure
s     Pa
0     3820`,
    right: `time  pressure
s     Pa
0     -3820`,
  },
}
export default code
