import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'file/not-there',
  severity: 'error',
  title: `A file that is named is not there`,
  page: `A record names a picture or a file that is not in the repository, or a file that every campaign has (\`shared/campaign.yaml\`, \`shared/people.yaml\`) is missing. Paths count from the folder of the file that names them.

Add the file, or correct the name.`,
  example: {
    wrong: `files: [{file: guage.jpg, caption: The gauge}]`,
    right: `files: [{file: gauge.jpg, caption: The gauge}]`,
  },
}
export default code
