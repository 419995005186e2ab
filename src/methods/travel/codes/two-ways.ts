import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'travel/two-ways',
  severity: 'error',
  title: 'A row has an angle and an offset',
  page: `Nothing says which of them counts. Keep one in each row, and one kind for each position.`,
  example: {
    wrong: `position  angle  offset
text      deg    mm
left      25.2   175`,
    right: `position  offset
text      mm
left      175`,
  },
}
export default code
