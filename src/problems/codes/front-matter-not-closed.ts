import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'front-matter/not-closed',
  severity: 'error',
  title: `The front matter is not closed`,
  page: `The fields end with a line \`---\`. Without it the prose would be read as fields.

Put a line \`---\` below the last field.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `---
title: Taxi
order: 2
cards: [spring-pull]
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
