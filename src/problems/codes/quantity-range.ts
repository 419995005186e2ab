import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/range',
  severity: 'error',
  title: `A range or a limit cannot be read`,
  page: `A range goes from the lower to the upper end, \`-5 kPa .. 0 kPa\`; a limit is \`<= 5 Pa\`.

Write it so.`,
  example: {
    in: 'shared/instruments/fg-01.md',
    wrong: `range: 500 N .. 0 N`,
    right: `range: 0 N .. 500 N`,
  },
}
export default code
