import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/no-test-pressure',
  severity: 'error',
  title: 'The card does not say what to draw or blow to',
  page: `The static line is drawn to \`test_climb\` (1000 ft above the aircraft) or to \`test_suction\` (about 1 inHg); the rule names
both, and they are not the same: near the sea 1 inHg is 938 ft. The pitot line is blown to \`test_airspeed\`.`,
  example: {
    wrong: `test_suction: 1 inHg
test_climb: 1000 ft`,
    right: `test_climb: 1000 ft`,
  },
}
export default code
