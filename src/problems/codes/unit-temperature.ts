import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/temperature',
  severity: 'error',
  title: `A temperature scale inside a product`,
  page: `°C and °F have their zero elsewhere than 0 K: a rate per °C is meant per kelvin.

Write \`K\`.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `stop-at: {load: 5 N/°C}`,
    right: `stop-at: {load: 5 N}`,
  },
}
export default code
