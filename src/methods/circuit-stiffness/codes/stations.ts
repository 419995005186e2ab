import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/stations',
  severity: 'error',
  title: 'The stations are not a list of names',
  page: `\`stations\` lists, in order from the loaded end to the fixture, the places at which the motion is read. Each name
makes a column \`at_<name>\`, a given \`ratio_<name>\` and measures, so it is made of lower case letters, digits and
\`_\`, begins with a letter, and stands once. \`load\` and \`fixture\` are the two ends and cannot be stations.`,
  example: {
    wrong: `stations: [Horn, bellcrank, bellcrank]`,
    right: `stations: [horn, bellcrank, stick]`,
  },
}
export default code
