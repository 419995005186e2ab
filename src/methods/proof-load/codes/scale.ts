import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-load/scale',
  severity: 'error',
  title: 'The scale is not described',
  page: `\`scale: peak-hold\` says that the scale shows only the highest load since it was set to zero. Its readings are then no
points of a curve, and nothing shows how long the load was held. \`scale: live\` is what is taken where the card says nothing.`,
  example: {
    wrong: `scale: peak`,
    right: `scale: peak-hold`,
  },
}
export default code
