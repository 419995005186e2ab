import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/two-scales',
  severity: 'error',
  title: 'A row has readings of two scales',
  page: `A row is one point on one scale. Write \`-\` under the scales that do not stand under it. Where two scales carry one wheel
together, each is a point of its own.`,
  example: {
    wrong: `point      reading_a  reading_b
text       kg         kg
left_main  171.0      170.5`,
    right: `point      reading_a  reading_b
text       kg         kg
left_main  171.0      -
left_main  -          170.5`,
  },
}
export default code
