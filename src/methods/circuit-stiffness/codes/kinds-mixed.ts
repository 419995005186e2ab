import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/kinds-mixed',
  severity: 'error',
  title: 'A given and the readings are in different terms',
  page: `The limit load, the full travel and the motion at the stations are compared with the readings. A moment can be
compared with a force, and an angle with a length, only where an arm joins them. A ratio of a station is its motion per
motion of the surface: a length per angle (\`mm/deg\`) where the station is read with a dial, a pure number where both
are angles.

Give the quantity in the terms of the readings, or add \`arm\`.`,
  example: {
    wrong: `given:
  limit_load: 40 N·m
readings: |
  load  deflection
  N     mm`,
    right: `given:
  limit_load: 40 N·m
  arm: 420 ± 1 mm
readings: |
  load  deflection
  N     mm`,
  },
}
export default code
