import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'quantity/uncertainty',
  severity: 'error',
  title: `An uncertainty cannot be read`,
  page: `± is an expanded uncertainty for 95 %, k = 2, unless the text says \`(k=3)\`, \`(limits)\` or \`(u)\`; \`(exact)\` says that there is none.

Write it so.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm (k=0)}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
    right: `articles:
  wing-left: {arm: 120.0 ± 0.5 mm (k=3)}
  wing-right: {arm: 121.0 ± 0.5 mm}`,
  },
}
export default code
