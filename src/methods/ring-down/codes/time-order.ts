import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'ring-down/time-order',
  severity: 'error',
  title: 'The time does not go on',
  page: `Frequency and damping are read off the clock, so every reading needs a time of its own, later than that of the row
before. A logger that writes its times with too few digits shows the same time twice: write the number of the reading
over the sampling rate instead.`,
  example: {
    wrong: `time  signal
s     m/s^2
0.00  1.21
0.00  1.34
0.01  1.42`,
    right: `time   signal
s      m/s^2
0.000  1.21
0.004  1.34
0.008  1.42`,
  },
}
export default code
