import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/volume-unknown',
  severity: 'error',
  title: 'The volume is not known',
  page: `The same leak moves the pressure of a small, stiff volume more than that of a large or soft one. Two of these three
must be known: \`volume\` (of the gas, at zero gauge), how the walls give (\`volume_compliance\`, or
\`rigid: because …\`), and a syringe step made on the spot (\`syringe_volume\` and \`syringe_step\`).`,
  example: {
    wrong: `given:
  volume: 96.4 ± 0.6 L`,
    right: `given:
  volume: 96.4 ± 0.6 L
  volume_compliance: 0.02 ± 0.01 L/kPa`,
  },
}
export default code
