import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'flow-resistance/requirement-incomplete',
  severity: 'error',
  title: 'What the vent must pass cannot be worked out',
  page: `In a climb the gas above the fuel expands, in a descent air must come in. The flow is the volume of that gas times
its relative change: V · ρ g₀/P · dh/dt. It needs \`ullage\`, \`altitude\` and \`climb_rate\` or \`descent_rate\`. The empty
tank is the worst, and so is the highest altitude (up to 11 km).`,
  example: {
    wrong: `given:
  descent_rate: 2000 ft/min`,
    right: `given:
  ullage: 96.4 ± 0.6 L
  descent_rate: 2000 ft/min
  altitude: 3000 m`,
  },
}
export default code
