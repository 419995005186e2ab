import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/duplicate-key',
  severity: 'error',
  title: `A field stands twice`,
  page: `YAML readers keep the first, the last or refuse; nobody can tell which one was meant.

Keep one of the two.`,
  example: {
    wrong: `stopped: pump failed
stopped: hangar closed`,
    right: `stopped: pump failed, hangar closed`,
  },
}
export default code
