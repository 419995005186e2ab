import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/envelope',
  severity: 'error',
  title: 'The envelope is no polygon of mass and arm',
  page: `\`envelope\` goes round its corners, each a pair of mass and arm. Three corners or more; sides do not cross.`,
  example: {
    wrong: `envelope:
  - [250 kg, 1.50 m]
  - [600 kg, 1.75 m]
  - [600 kg, 1.56 m]
  - [250 kg, 1.75 m]`,
    right: `envelope:
  - [250 kg, 1.50 m]
  - [600 kg, 1.56 m]
  - [600 kg, 1.75 m]
  - [250 kg, 1.75 m]`,
  },
}
export default code
