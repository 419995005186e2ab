import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/empty',
  severity: 'error',
  title: `The file is empty`,
  page: `A record begins with a line \`---\`, then fields, then a line \`---\` and prose. An empty file is often one that an editor made and nobody filled in.

Fill it in (\`npm run new\` writes a run with what is known), or delete it.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: ``,
    right: `---
title: Taxi
order: 2
cards: [spring-pull, spring-proof]
---
`,
  },
}
export default code
