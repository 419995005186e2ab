import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'inspection/answer',
  severity: 'error',
  title: 'The answer does not fit the entry',
  page: `An entry without limits is answered by \`ok\`, \`not-ok\` or \`n/a\`; \`-\` says that nobody looked. An entry with limits
is answered by a number, with its unit in the column \`unit\` of the same row.`,
  example: {
    wrong: `entry       as_left  unit
text        text     text
lap_torque  ok       -`,
    right: `entry       as_left  unit
text        text     text
lap_torque  24.0     N·m`,
  },
}
export default code
