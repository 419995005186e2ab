import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/thousands',
  severity: 'error',
  title: `Separators between the figures of a number`,
  page: `\`1,200\` is twelve hundred to some and one and a fifth to others.

Leave the separators out.`,
  example: {
    in: 'shared/instruments/fg-01.md',
    wrong: `resolution: 1'200 N`,
    right: `resolution: 0.1 N`,
  },
}
export default code
