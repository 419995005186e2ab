import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/reduced-barometer',
  severity: 'error',
  title: 'The barometer is reduced to sea level',
  page: `Weather reports give the air pressure as it would be at sea level. At the place of the test there is less: about
12 hPa for each 100 m. With the \`elevation\` given, a \`baro\` that the air at that height never has is refused.

Read a barometer in the hangar, or take the station pressure (QFE).`,
  example: {
    wrong: `given: {elevation: 1200 m}
readings: |
  time  pressure  temperature  baro
  min   Pa        °C           hPa
  0     -2653     18.42        1013.2`,
    right: `given: {elevation: 1200 m}
readings: |
  time  pressure  temperature  baro
  min   Pa        °C           hPa
  0     -2653     18.42        877.1`,
  },
}
export default code
