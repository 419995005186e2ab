import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'field/not-filled',
  severity: 'error',
  title: 'A field is not filled in yet',
  page: `\`npm run new\` marks with \`…\` what only the technician knows. A file that still has such a mark is not read any further,
so nothing is judged on half a record.

Write what was. A field that is not needed (a witness, say) can be taken out.`,
  example: {
    in: 'records/runs/2026-03/2026-03-04-0912-spring-pull.md',
    wrong: `witness: …`,
    right: `witness: rlind`,
  },
}
export default code
