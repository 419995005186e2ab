import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'reference/removed',
  severity: 'error',
  title: `What was taken out is not said`,
  page: `What was fitted for a test is named by run and id: \`<run>#<id>\`.

Write both, in quotes.`,
  example: {
    in: 'records/rework/2026-03-05-horn.md',
    wrong: `removed: ["2026-03-04-0912-spring-pull"]`,
    right: `removed: ["2026-03-04-0912-spring-pull#pin"]`,
  },
}
export default code
