import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/gravity',
  severity: 'error',
  title: 'Nothing says for which gravity the scales show a mass',
  page: `A scale weighs a force and shows the mass that has this weight where it was adjusted. Gravity differs by up to 0.5 %
between equator and poles, and by 0.2 % across a continent: half a kilogram in 300.

Give the latitudes, \`latitude\` here and \`scale_latitude\` where the scales were adjusted, or say in
\`checked_on_the_spot\` how they were checked in place.`,
  example: {
    wrong: `given:
  latitude: 47 deg`,
    right: `given:
  latitude: 47 deg
  scale_latitude: 38 deg`,
  },
}
export default code
