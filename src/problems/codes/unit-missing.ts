import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/missing',
  severity: 'error',
  title: `A unit is missing`,
  page: `A bare number where a unit is needed could be newtons or pounds.

Write the unit behind the number.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given:
  loaded_end: surface
  limit_load: 100`,
    right: `given:
  loaded_end: surface
  limit_load: 100 N`,
  },
}
export default code
