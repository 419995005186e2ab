import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'circuit-stiffness/fixture-twice',
  severity: 'error',
  title: 'The fixture motion is given twice',
  page: `What the fixture gives is taken off the deflection, so that it does not count as circuit. Here it is read in the
column \`at_fixture\` and known from before as \`fixture_compliance\`. Only one can be taken off.

Keep the column: it was measured in this run.`,
  example: {
    wrong: `given: {fixture_compliance: 0.002 ± 0.0005 mm/N}
readings: |
  load  deflection  at_fixture
  N     mm          mm`,
    right: `readings: |
  load  deflection  at_fixture
  N     mm          mm`,
  },
}
export default code
