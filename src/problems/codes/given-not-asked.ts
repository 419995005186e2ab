import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'given/not-asked',
  severity: 'warning',
  title: `A run changes a given that the card does not ask for`,
  page: `The value of the card is then not used. That may be right, but it is a deviation, and somebody has agreed to it.

Name it under \`deviations\`, or list it under \`ask\` of the card.`,
  example: {
    wrong: `given: {drift_error: 0.3 K (u), arm: 119.0 ± 0.5 mm}`,
    right: `given: {drift_error: 0.3 K (u)}`,
  },
}
export default code
