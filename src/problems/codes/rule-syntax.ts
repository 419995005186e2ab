import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'rule/syntax',
  severity: 'error',
  title: `This is no decision rule`,
  page: `\`guarded 95 %\` passes what conforms with at least that probability; \`simple\` compares the value alone. A guarded rule of 50 % or less would pass what more likely fails.

Write one of the two.`,
  example: {
    in: 'shared/cards/spring-pull.md',
    wrong: `criteria:
  stiff: {accept: stiffness > 4 N/mm, rule: guarded 95, why: invented}`,
    right: `criteria:
  stiff: {accept: stiffness > 4 N/mm, rule: guarded 95 %, why: invented}`,
  },
}
export default code
