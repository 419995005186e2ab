import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/only-uncertainty',
  severity: 'error',
  title: `A known value is given as an uncertainty`,
  page: `\`0.3 mm (u)\` says that the number itself is a standard uncertainty. A length or a volume that is known needs a value.

Write value, ± and uncertainty; \`(u)\` behind it says that ± is a standard uncertainty.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: 0.5 mm (u)}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm (u)}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
