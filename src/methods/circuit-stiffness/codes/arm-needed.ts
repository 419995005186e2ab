import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/arm-needed',
  severity: 'error',
  title: 'Force and angle, or moment and length, without an arm',
  page: `A stiffness is moment per angle, or force per length. A force beside an angle, or a moment beside a length, gives
neither: the distance from the load line to the pivot is needed. The same pull at the grip and at the top of the stick
are two different tests.

Give \`arm\` with its uncertainty, or read both in the same terms.`,
  example: {
    wrong: `given:
  loaded_end: surface
readings: |
  load  deflection
  N     deg`,
    right: `given:
  loaded_end: surface
  arm: 420 ± 1 mm
readings: |
  load  deflection
  N     deg`,
  },
}
export default code
