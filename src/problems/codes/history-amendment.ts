import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'history/amendment',
  severity: 'warning',
  title: 'An amendment names nothing that changed',
  page: `An amendment goes with a change of a run that has landed: \`at\` names the place, \`was\` what stood there. At the place that this one names, nothing has changed since the run landed, so the change that it was meant for is still unexplained, or there is none.

Places are named from the outside in, separated by blanks: a field (\`witness\`), a field within a field (\`given volume\`, \`instruments pressure\`), an entry of a list by its number or its id (\`deviations 2 why\`, \`fitted vent-plug what\`), a cell (\`readings row 30 column pressure\`), a whole row that was added or taken out (\`readings row 30\`), a column (\`readings column baro\`) or its unit (\`readings unit of pressure\`). Rows count from 1 below the line of units, as they stood when the run landed. What was not there before was \`nothing\`.`,
  example: {
    wrong: `amendments:
  - {when: 2026-03-06T08:00+01:00, by: moduya, at: readings row 31 column load, was: 10, why: misread}`,
    right: `amendments:
  - {when: 2026-03-06T08:00+01:00, by: moduya, at: readings row 1 column load, was: 10, why: misread}`,
  },
}
export default code
