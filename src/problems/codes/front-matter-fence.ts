import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'front-matter/fence',
  severity: 'error',
  title: `The line of dashes is not exactly three dashes`,
  page: `Front matter stands between two lines \`---\`. Programs differ in what they make of four dashes, of a word behind the dashes, or of text behind the closing ones: some run \`---js\` as a program. So nothing but three dashes is accepted.

Write \`---\` alone on the line.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `---yaml
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
