import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/unreadable',
  severity: 'error',
  title: `A file cannot be read`,
  page: `The file system refused to give the file: it may not be read, or it is a link to nowhere. Nothing that stands in it was checked.

Mend the permissions or the link.`,
  example: {
    wrong: `(a link to a file that was deleted)`,
    right: `(the file itself)`,
  },
}
export default code
