import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'reference/cycle',
  severity: 'error',
  title: `Things rest on each other in a ring`,
  page: `A gate that in the end needs itself can never be met; a run whose given comes in the end from itself has no value.

Take one of the references of the ring out.`,
  example: {
    in: 'shared/gates/taxi.md',
    wrong: `needs: [taxi]`,
    right: `needs: []`,
  },
}
export default code
