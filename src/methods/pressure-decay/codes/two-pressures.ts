import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/two-pressures',
  severity: 'error',
  title: 'The pressure is there twice',
  page: `The readings hold more than one of \`pressure\`, \`absolute_pressure\`, \`vacuum\` and the legs of a U-tube. The
verdict rests on one of them, and the software does not choose.

Keep one column; say of the other in \`remark\` or in the prose.`,
  example: {
    wrong: `time  pressure  vacuum  temperature  baro`,
    right: `time  pressure  temperature  baro`,
  },
}
export default code
