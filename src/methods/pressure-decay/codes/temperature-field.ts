import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/temperature-field',
  severity: 'error',
  title: 'The card field `temperature` says something else',
  page: `On a pressure-decay card, \`temperature\` has one meaning: \`not measured\`. Then \`temperature_error\` is the standard
uncertainty of the change of the gas temperature itself.`,
  example: {
    wrong: `temperature: no`,
    right: `temperature: not measured`,
  },
}
export default code
