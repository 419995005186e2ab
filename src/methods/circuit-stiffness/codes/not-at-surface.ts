import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/not-at-surface',
  severity: 'error',
  title: 'A stiffness at the cockpit where one at the surface is asked for',
  page: `The cockpit was loaded, so \`stiffness\`, its two directions, \`secant_at_limit\` and \`compliance\` are those at the
cockpit. The function asks for the stiffness at the surface, which is that at the cockpit over the gearing squared: with
a gearing of 1.2 the surface would look 44 % stiffer than it is.

\`surface_stiffness\` is taken to the surface with the given \`gearing\`. A formula may do the same itself, as in
\`stiffness_positive / gearing^2\`.`,
  example: {
    wrong: `given: {loaded_end: cockpit, gearing: 1.20 ± 0.02}
criteria:
  kept:
    accept: deflection_kept(stiffness, hinge_moment) >= 80 %`,
    right: `given: {loaded_end: cockpit, gearing: 1.20 ± 0.02}
criteria:
  kept:
    accept: deflection_kept(surface_stiffness, hinge_moment) >= 80 %`,
  },
}
export default code
