import type { ProblemCode } from '../types.ts'

const code: ProblemCode = {
  code: 'history/unknown',
  severity: 'warning',
  title: 'The history of the records is not known',
  page: `Who recorded a run, whether somebody reviewed it, and whether a reading or a limit was changed afterwards is read from git. Here git has no history to show: the files do not lie in a repository, git is not installed, or only the newest commits were fetched. Results and verdicts are computed all the same; nothing is shown as reviewed or as unchanged, and no open item says so.

Do what the hint says; a clone that was fetched in part gets the rest with \`git fetch --unshallow\`.`,
  example: {
    wrong: 'title: Invented campaign, in a clone that holds only the newest commit',
    right: 'title: Invented campaign, in a clone with its whole history',
    in: 'shared/campaign.yaml',
  },
}
export default code
