import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'fuel-flow/no-density',
  severity: 'error',
  title: 'The density of the fuel is missing',
  page: `A mass was read and the consumption is a volume per time, or the other way round. The density differs by several per
cent between fuels, and by a tenth of a per cent per kelvin: measure it on the day.`,
  example: {
    wrong: `given:
  required: 27 L/h`,
    right: `given:
  required: 27 L/h
  density: 0.722 ± 0.002 kg/L`,
  },
}
export default code
