import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/decimal-comma',
  severity: 'error',
  title: `A decimal comma`,
  page: `The decimal sign is the point. In YAML a comma also separates the entries of a list or a set, so that \`{arm: 120,5 mm}\` falls apart.

Write a point.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: 120,5 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.5 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
