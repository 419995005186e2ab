import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/syntax',
  severity: 'error',
  title: `A unit cannot be read`,
  page: `Units are multiplied with \`·\` or a blank and divided with one \`/\`; what is divided by several goes into brackets: \`rad/(N·m)\`.

Write it so.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given:
  loaded_end: surface
  limit_load: 100 N/`,
    right: `given:
  loaded_end: surface
  limit_load: 100 N`,
  },
}
export default code
