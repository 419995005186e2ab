import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/not-fields',
  severity: 'error',
  title: `The front matter is no set of fields`,
  page: `A record is a set of fields, each with a name, a colon, a blank and a value. A list or a mere text is neither.

Write one field a line.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `---
- Taxi
- 2
---
`,
    right: `---
title: Taxi
order: 2
cards: [spring-pull]
---
`,
  },
}
export default code
