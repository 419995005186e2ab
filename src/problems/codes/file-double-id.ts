import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/double-id',
  severity: 'error',
  title: `Two files have one id`,
  page: `The id of a thing is the name of its file, across all folders and kinds; capital letters do not tell two apart, because some file systems do not. The first file, in the order of paths, is read; the other is left out.

Rename one of the two, and what refers to it.`,
  example: {
    in: 'records/items/taxi.md',
    wrong: `---
title: Play in the horn
kind: action
raised: {when: 2026-03-04T12:00+01:00, by: rlind}
about: [spring-pull]
---
`,
    right: `---
title: Play in the horn
kind: action
raised: {when: 2026-03-04T12:00+01:00, by: rlind}
about: [spring-pull]
---
`,
  },
}
export default code
