import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/entry-became-fields',
  severity: 'error',
  title: `An entry of a list became a set of fields`,
  page: `\`- note: stand clear\` is a set of one field to YAML, because of the colon and the blank. Where a list of texts is expected that is never meant.

Put the entry in quotes.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `cautions:
  - note: stand clear`,
    right: `cautions:
  - "note: stand clear"`,
  },
}
export default code
