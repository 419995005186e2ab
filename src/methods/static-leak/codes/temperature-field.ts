import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'static-leak/temperature-field',
  severity: 'error',
  title: 'temperature of a card says something else',
  page: `A static-leak card may say \`temperature: not measured\`, where no thermometer is read. The readings themselves are a
column of the run.`,
  example: {
    wrong: `temperature: 18 °C`,
    right: `temperature: not measured`,
  },
}
export default code
