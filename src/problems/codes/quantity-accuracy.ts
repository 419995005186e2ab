import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/accuracy',
  severity: 'error',
  title: `An accuracy cannot be read`,
  page: `A maker states accuracy as limits: of the reading, of the span, or in the unit that is read. A bare per cent sign does not say of what.

Write \`± (0.5 % reading + 0.1 % span)\` or \`± 2 Pa\`.`,
  example: {
    in: 'shared/instruments/fg-01.md',
    wrong: `accuracy: ± 0.2 %`,
    right: `accuracy: ± 0.2 % reading`,
  },
}
export default code
