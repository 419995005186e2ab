import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'front-matter/missing',
  severity: 'error',
  title: `There is no front matter`,
  page: `The very first line of a record is \`---\`. With a blank line before it, most programs see no fields at all and say nothing.

Begin the file with \`---\`.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `
---
title: Taxi
order: 2
cards: [spring-pull]
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
