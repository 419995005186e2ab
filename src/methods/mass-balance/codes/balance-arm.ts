import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'mass-balance/balance-arm',
  severity: 'error',
  title: 'A balance weight on the hinge line',
  page: `\`balance_arm\` is where the balance weight sits, from the hinge line, negative ahead of it. At 0 no weight balances
anything.`,
  example: {
    wrong: `given:
  balance_arm: 0 mm (exact)`,
    right: `given:
  balance_arm: -80 ± 0.5 mm`,
  },
}
export default code
