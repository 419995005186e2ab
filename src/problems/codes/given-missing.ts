import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/missing',
  severity: 'error',
  title: `A given is missing`,
  page: `The method cannot compute without it, or the card asks for it to be measured on the day.

Add it to the card, or to the run where the card asks for it.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given: {loaded_end: surface}`,
    right: `given:
  loaded_end: surface
  limit_load: 100 N`,
  },
}
export default code
