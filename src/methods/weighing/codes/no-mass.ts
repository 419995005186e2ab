import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'weighing/no-mass',
  severity: 'error',
  title: 'Nothing says how much an item weighs',
  page: `An item that is added or removed is weighed in its own row, or given as \`mass_<item>\`, or as \`volume_<item>\` with
\`density_<item>\`. Not known is not zero.`,
  example: {
    wrong: `given:
  arm_fuel: 1.70 m ± 20 mm`,
    right: `given:
  arm_fuel: 1.70 m ± 20 mm
  volume_fuel: 42.0 ± 0.5 L
  density_fuel: 0.722 ± 0.002 kg/L`,
  },
}
export default code
