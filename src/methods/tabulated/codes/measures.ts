import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'tabulated/measures',
  severity: 'error',
  title: 'A measure of the card cannot be read',
  page: `A measure is a name and a formula over the columns of the card, its givens and other measures. Beside the
formula there may be a \`meaning\`, and \`positive: yes\` for what cannot be negative.

Names are lower case letters, digits and \`_\`, and none of a unit, a function, a column or a given. A limit does not
belong here: it stands in \`criteria\`.`,
  example: {
    wrong: `measures:
  drop: {of: first(rpm) - last(rpm)}`,
    right: `measures:
  drop: {formula: first(rpm) - last(rpm), meaning: drop on one ignition}`,
  },
}
export default code
