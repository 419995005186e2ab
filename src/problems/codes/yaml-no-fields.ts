import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/no-fields',
  severity: 'error',
  title: `There are no fields`,
  page: `Between the two lines \`---\` stands no field, or only comments.

Fill in the fields of this kind of record.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `---
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
