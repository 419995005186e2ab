import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'tabulated/aggregate',
  severity: 'error',
  title: 'A formula does not say which value of a column it means',
  page: `A column has many values and a formula needs one. An aggregate makes it: \`mean(y)\`, \`max(y)\`, \`min(y)\`,
\`first(y)\`, \`last(y)\`, \`count(y)\`, \`range(y)\`, \`slope(y, x)\`, \`at(y, x, place)\`, \`integral(y, x)\`. Between
the brackets stand columns as the card names them, not formulas.

The place in \`at\` is a value of x, or one of the \`words\` that the card lists for it.`,
  example: {
    wrong: `measures:
  drop: first(rpm) - rpm`,
    right: `measures:
  drop: first(rpm) - last(rpm)`,
  },
}
export default code
