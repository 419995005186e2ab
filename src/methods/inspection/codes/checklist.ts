import type { ProblemCode } from '../../../problems/types.ts'

const code: ProblemCode = {
  code: 'inspection/checklist',
  severity: 'error',
  title: 'The checklist cannot be read',
  page: `The list of an inspection is on the card: each entry by name, with a \`text\` that says what is looked at. An entry
with a value has \`low\`, \`high\` or both, with unit; it is then left with a number, not with \`ok\`.`,
  example: {
    wrong: `checklist:
  lap-torque: {text: lap anchor, from: 22 N·m}`,
    right: `checklist:
  lap_torque: {text: lap anchor, low: 22 N·m}`,
  },
}
export default code
