import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'formula/syntax',
  severity: 'error',
  title: `A formula cannot be read`,
  page: `A formula has numbers with units, names, \`+ - * / ^\`, brackets, comparisons, \`and\`, and the functions of the handbook.

Correct it at the place that is marked.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: "stiffness > (4 N/mm", why: invented}`,
    right: `criteria:
  stiff: {accept: "stiffness > 4 N/mm", why: invented}`,
  },
}
export default code
