import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/no-temperature',
  severity: 'error',
  title: 'No temperature was read',
  page: `A closed volume of gas follows its absolute temperature: near room temperature and one atmosphere, 1 K is about
340 to 350 Pa. One thermometer makes the difference between a leak and a cloud before the sun.

Read \`temperature\` with the pressure. Where that cannot be, say \`temperature: not measured\` on the card and give
as \`temperature_error\` the standard uncertainty of the change of the gas temperature itself: the result then
carries it. With a second tight volume as \`reference_pressure_reading\` no thermometer is needed for the change.`,
  example: {
    wrong: `time  pressure  baro
min   Pa        hPa
0     -2653     1009.8`,
    right: `time  pressure  temperature  baro
min   Pa        °C           hPa
0     -2653     18.42        1009.8`,
  },
}
export default code
