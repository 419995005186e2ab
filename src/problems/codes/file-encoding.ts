import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/encoding',
  severity: 'error',
  title: `The file is not UTF-8`,
  page: `All text files are UTF-8. In older encodings the signs °, ± and µ have other bytes, and what is read in their place is not what was written.

Open the file in its own encoding and save it as UTF-8.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `title: Rudder at 20 \uFFFD`,
    right: `title: Rudder at 20 °`,
  },
}
export default code
