import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'fuel-flow/two-quantities',
  severity: 'error',
  title: 'Both a volume and a mass were read',
  page: `What ran into the can is read as \`volume\` or as \`mass\`; with both, nothing says which counts. The other may go into a
remark.`,
  example: {
    wrong: `time  volume  mass
s     L       kg
60    0.90    0.65`,
    right: `time  mass
s     kg
60    0.65`,
  },
}
export default code
