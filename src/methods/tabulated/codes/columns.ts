import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'tabulated/columns',
  severity: 'error',
  title: 'A column of the card cannot be read',
  page: `A tabulated card says what is read: each column by name, with its \`unit\` (or the \`kind\` of quantity) and a
\`meaning\`. Words have \`unit: text\`; a clock that is read as time of day has \`unit: hh:mm\`.

Mend the entry. A unit of a dimension that no instrument shows as such is built in a measure, out of what is read.`,
  example: {
    wrong: `columns:
  rpm: {units: rpm}`,
    right: `columns:
  rpm: {unit: rpm, meaning: engine speed at the tachometer}`,
  },
}
export default code
