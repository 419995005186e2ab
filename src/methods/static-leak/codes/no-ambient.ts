import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/no-ambient',
  severity: 'error',
  title: 'The pressure of the air around is not known',
  page: `Suction counts from the air around, and a foot is fewer pascals the higher the place. The altimeter with the line open says
it as \`field_altitude\`, or a barometer as the column \`baro\` (station pressure).`,
  example: {
    wrong: `test_climb: 1000 ft`,
    right: `test_climb: 1000 ft
field_altitude: 1420 ft ± 20 ft`,
  },
}
export default code
