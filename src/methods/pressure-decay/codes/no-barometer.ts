import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/no-barometer',
  severity: 'warning',
  title: 'No barometer was read',
  page: `A gauge reads against the air of the moment. 1 hPa of weather is 100 Pa on the gauge. Without a barometer its
change over the hold counts with a standard uncertainty of 25 Pa and 40 Pa for each hour, at most 700 Pa. This is
often the biggest line of the budget.

Read \`baro\` (station pressure, not reduced to sea level) with each reading.`,
  example: {
    wrong: `time  pressure  temperature
min   Pa        °C
0     -2653     18.42`,
    right: `time  pressure  temperature  baro
min   Pa        °C           hPa
0     -2653     18.42        1009.8`,
  },
}
export default code
