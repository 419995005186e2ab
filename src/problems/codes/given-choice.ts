import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/choice',
  severity: 'error',
  title: `A word that the given does not know`,
  page: `Some givens know a few words only, because the method computes differently for each.

Take one of the words that are listed.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given: {limit_load: 100 N, loaded_end: surfce}`,
    right: `given: {limit_load: 100 N, loaded_end: surface}`,
  },
}
export default code
