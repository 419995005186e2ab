import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-load/mixed-movement',
  severity: 'error',
  title: 'Stations are not of one kind',
  page: `With several stations the worst is shown under the bare name (\`permanent_set\`). A length cannot be worse than an
angle, so all stations of one run are of one kind.`,
  example: {
    wrong: `time  load  station_1  station_2
s     N     mm         deg`,
    right: `time  load  station_1  station_2
s     N     mm         mm`,
  },
}
export default code
