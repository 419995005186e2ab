import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/wrong-dimension',
  severity: 'error',
  title: `A quantity of another kind is asked for`,
  page: `A mass cannot stand for a force, nor a stiffness per inch for one per degree. What is computed from it would be wrong by more than a factor.

Give a quantity of the kind that is asked for.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given:
  loaded_end: surface
  limit_load: 100 kg`,
    right: `given:
  loaded_end: surface
  limit_load: 100 kgf`,
  },
}
export default code
