import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/other-side',
  severity: 'error',
  title: 'The pressure is on the other side of ambient',
  page: `\`test_pressure\` is below ambient and the readings are above it, or the other way round. The sign is part of the
pressure: negative below ambient. A gauge that counts downwards from ambient has the column \`vacuum\`.`,
  example: {
    wrong: `time  pressure  temperature  baro
min   Pa        °C           hPa
0     2653      18.42        1009.8`,
    right: `time  vacuum  temperature  baro
min   Pa      °C           hPa
0     2653    18.42        1009.8`,
  },
}
export default code
