import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'proof-pressure/no-target',
  severity: 'error',
  title: 'There is no pressure to be reached',
  page: `A proof is judged by whether its target was reached and held. Give \`target\`, best as a formula under \`targets\`, or
the \`density\`, \`load_factor\` and \`column\` (and \`vent_pressure\`) from which it follows. A target of 0 is reached by doing
nothing.`,
  example: {
    wrong: `given:
  hold: 60 s`,
    right: `given:
  hold: 60 s
  density: 720 kg/m³ ± 10 kg/m³
  load_factor: 3.8
  column: 0.25 m ± 5 mm`,
  },
}
export default code
