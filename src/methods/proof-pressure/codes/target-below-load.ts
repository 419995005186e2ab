import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-pressure/target-below-load',
  severity: 'warning',
  title: 'The target is below the load that it stands for',
  page: `The card gives both a target and the density, load factor and column of liquid. What these come to
(ρ n g₀ h + vent pressure) is more than the target. A proof below the load proves nothing of it.

Let the target follow from them, or leave out what does not belong to this test.`,
  example: {
    wrong: `targets:
  target: density * g0 * column`,
    right: `targets:
  target: density * load_factor * g0 * column + vent_pressure`,
  },
}
export default code
