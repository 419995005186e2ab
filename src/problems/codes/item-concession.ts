import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'item/concession',
  severity: 'error',
  title: `A concession is not complete`,
  page: `A concession says which criterion of which run is accepted although it is not met, who agreed (a person with the role \`concede\`), and until when: \`round\` or a date. No other item has these fields.

Add what is missing.`,
  example: {
    in: 'records/items/horn-play.md',
    wrong: `kind: concession`,
    right: `kind: concession
run: 2026-03-04-0912-spring-pull
criterion: stiff
agreed: rlind
until: round`,
  },
}
export default code
