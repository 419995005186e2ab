import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/no-test-pressure',
  severity: 'error',
  title: 'The test pressure is zero',
  page: `A leak shows only under a pressure. \`test_pressure\` is the gauge pressure that must be reached: negative below
ambient, positive above.`,
  example: {
    wrong: `test_pressure: 0 Pa`,
    right: `test_pressure: -2.5 kPa`,
  },
}
export default code
