import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'flow-resistance/drop-sign',
  severity: 'error',
  title: 'The drop is negative',
  page: `Flow and drop are counted along the flow and are positive both ways; the column \`direction\` says which way it
flowed. A gauge tapped at the tank shows suction when air comes in: write it without its sign.`,
  example: {
    wrong: `flow   pressure_drop  direction
L/min  Pa             text
6      -31            in`,
    right: `flow   pressure_drop  direction
L/min  Pa             text
6      31             in`,
  },
}
export default code
