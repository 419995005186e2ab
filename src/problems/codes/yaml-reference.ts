import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'yaml/reference',
  severity: 'error',
  title: `Anchors, aliases and merge keys are not used`,
  page: `\`&name\`, \`*name\` and \`<<\` let one part of a YAML file stand for another. A change of a reading would then not show on its own line, and readers differ.

Write the value out in full.`,
  example: {
    wrong: `stopped: &why pump failed`,
    right: `stopped: pump failed`,
  },
}
export default code
