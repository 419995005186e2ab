import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'unit/meaning',
  severity: 'error',
  title: `The dimension fits, the meaning does not`,
  page: `A moment and an energy have the same dimension, and so have a temperature and a difference of two. One cannot stand for the other: 5 °C as a difference would become 278 K.

Write the unit of what is meant: \`N·m\` for a moment, \`K\` for a difference.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `given:
  loaded_end: surface
  limit_load: 100 J`,
    right: `given:
  loaded_end: surface
  limit_load: 100 N·m`,
  },
}
export default code
