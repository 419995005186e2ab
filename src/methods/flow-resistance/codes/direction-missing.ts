import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'flow-resistance/direction-missing',
  severity: 'error',
  title: 'A row does not say which way it flowed',
  page: `Where the column \`direction\` is there, in and out are fitted apart. A row without a way belongs to neither and is left
out. Where the path has no flap, valve or screen, the whole column may be left out.`,
  example: {
    wrong: `flow   pressure_drop  direction
L/min  Pa             text
6      31             -`,
    right: `flow   pressure_drop  direction
L/min  Pa             text
6      31             in`,
  },
}
export default code
