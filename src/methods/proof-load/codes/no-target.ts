import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-load/no-target',
  severity: 'error',
  title: 'The target load is 0',
  page: `A proof load is judged by whether its target was reached and held. A target of 0 is reached by doing nothing; it
comes from a factor or an area that was left at 0.

Look at what the formula under \`targets\` is worked out to on the page of the card.`,
  example: {
    wrong: `targets:
  target: 0 * occupant * g0`,
    right: `targets:
  target: load_factor * occupant * g0`,
  },
}
export default code
