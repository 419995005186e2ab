import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'pressure-decay/no-density',
  severity: 'error',
  title: 'The U-tube has no density',
  page: `The legs of a U-tube are lengths. They are a pressure through the density of the liquid: coloured water, alcohol and
antifreeze differ by up to a fifth.`,
  example: {
    wrong: `title: U-tube, 1 m
resolution: 1 mm`,
    right: `title: U-tube, 1 m
resolution: 1 mm
liquid: water with a drop of ink
density: 998 kg/m³`,
  },
}
export default code
