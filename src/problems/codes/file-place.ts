import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/place',
  severity: 'error',
  title: `No kind of record lies here`,
  page: `The folder says what kind of record a file is, and its name is the id: small letters, digits and hyphens. Runs lie in a folder a month. A file in another place would be read by nobody.

Move or rename it.`,
  example: {
    in: 'shared/gates/First Flight.md',
    wrong: `---
title: First flight
order: 3
cards: [spring-pull]
---
`,
    right: `---
title: First flight
order: 3
cards: [spring-pull]
---
`,
  },
}
export default code
