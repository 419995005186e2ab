import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/shape',
  severity: 'error',
  title: `A field has another shape than expected`,
  page: `A field is a text, a list (\`[a, b]\`, or one entry a line with a dash) or a set of fields (\`{a: 1, b: 2}\`, or one a line, indented).

Write it in the shape that is asked for.`,
  example: {
    wrong: `by: moduya`,
    right: `by: [moduya]`,
  },
}
export default code
