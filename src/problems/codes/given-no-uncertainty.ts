import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/no-uncertainty',
  severity: 'warning',
  title: `A known given has no uncertainty`,
  page: `Not known is not zero. A known value without ± leaves the uncertainty of the measures not known, and a guarded criterion undetermined.

Write ± and what it is uncertain by, or \`(exact)\` where it is exact.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: 120.0 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
