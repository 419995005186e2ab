import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/syntax',
  severity: 'error',
  title: `This cannot be read as YAML`,
  page: `The front matter is YAML 1.2: one field a line, a name, a colon, a blank, a value; lists in square brackets or with a dash a line.

The line that is shown is where reading stopped; the mistake may stand just above it.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `? [a, b]
: c`,
    right: `title: Taxi`,
  },
}
export default code
