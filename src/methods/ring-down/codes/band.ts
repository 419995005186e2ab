import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'ring-down/band',
  severity: 'error',
  title: '`band` is not a range of frequencies',
  page: `A card says with \`band\` among which frequencies the mode is looked for: the lower and the upper end, each with its
unit or one unit for both. Without it the strongest line of the spectrum is taken.`,
  example: { wrong: 'band: 12', right: 'band: 5 Hz .. 15 Hz' },
}
export default code
