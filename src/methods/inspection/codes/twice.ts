import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'inspection/twice',
  severity: 'error',
  title: 'An entry is answered twice',
  page: `Two rows for one entry leave open which of them holds. What was found and what was left have columns of their own;
a second look on another day is another run.`,
  example: {
    wrong: `entry    as_left
text     text
webbing  not-ok
webbing  ok`,
    right: `entry    as_found  as_left
text     text      text
webbing  not-ok    ok`,
  },
}
export default code
