import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/unknown',
  severity: 'error',
  title: `A unit is not known`,
  page: `The list of units is short on purpose: a unit that means two things (\`C\`, \`nm\`, \`lbs\`) is refused. The nearest allowed names are given; the handbook lists all.

Take a unit of the list.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given:
  loaded_end: surface
  limit_load: 100 Nn`,
    right: `given:
  loaded_end: surface
  limit_load: 100 N`,
  },
}
export default code
