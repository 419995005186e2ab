import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/tab',
  severity: 'error',
  title: `There is a tab`,
  page: `YAML forbids tabs where lines are indented, and readers differ in what they make of them elsewhere. Only inside a table of readings are tabs welcome.

Replace the tab by blanks.`,
  example: {
    wrong: `by:
\t- moduya`,
    right: `by:
  - moduya`,
  },
}
export default code
