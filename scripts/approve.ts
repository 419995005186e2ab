import { openCampaign } from '../src/campaign/node/open.ts'
import { reviewMessage, trailers } from './approve/message.ts'
import { reviewFor } from './approve/review.ts'
import { parseIdentity } from './approve/reviewer.ts'
import { waitingText } from './approve/waiting.ts'
import { campaignRoot, complain, readCall, tool } from './command.ts'
import { git, gitLine } from './git.ts'

const HELP = `npm run approve -- <id or path>… [options]     a review of exactly this content, as lines for a commit message

  --commit          make a commit of them, without content; what is staged stays staged
  --list            what awaits a review
  --by ID           who reviews, where git does not know it (as in people.yaml)
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --help            this text

Runs, cards, instruments, gates, campaign: anything that has an id. Paste the lines into the message of the merge, or
let --commit make a commit; wherever they stand on the main line they count for this content and no other.
Exit status: 0 done; 1 it cannot be reviewed now, with the reason; 2 wrong call.
`

const refuse = (text: string): void => {
  process.stderr.write(`${text}\n`)
  process.exitCode = 1
}

const commit = (root: string, message: string): void => {
  const call = ['commit', '--quiet', '--allow-empty', '--only', '--file=-']
  const done = git(root, call, { input: message, loud: true })
  if (done.ok) {
    const hash = gitLine(root, ['rev-parse', '--short', 'HEAD'])
    process.stdout.write(`${message}\nCommitted as ${hash}.\n`)
  } else refuse(`Git made no commit: ${done.why}`)
}

const approve = async (
  root: string,
  texts: readonly string[],
  by: string | undefined,
  make: boolean,
): Promise<void> => {
  const identity = parseIdentity(gitLine(root, ['var', 'GIT_AUTHOR_IDENT']))
  const outcome = await reviewFor({ root, here: process.cwd(), texts, by, identity, tool })
  if (outcome.kind === 'wrong-call') return complain(outcome.text)
  if (outcome.kind === 'refused') return refuse(outcome.text)
  for (const remark of outcome.remarks) process.stderr.write(`${remark}\n`)
  const { reviewed, reviewer } = outcome
  if (reviewed.length === 0) return
  if (make) commit(root, reviewMessage(reviewed, reviewer))
  else process.stdout.write(trailers(reviewed, reviewer))
}

const main = async (): Promise<void> => {
  const call = readCall(
    {
      commit: { type: 'boolean' },
      list: { type: 'boolean' },
      by: { type: 'string' },
      root: { type: 'string' },
    },
    HELP,
  )
  if (!call) return
  const { commit: make = false, list = false, by, root: folder } = call.values
  const root = campaignRoot(folder, HELP)
  if (root === null) return
  if (!list && call.positionals.length === 0) return complain(`Name what was reviewed.\n\n${HELP}`)
  if (!list) return approve(root, call.positionals, by, make)
  if (call.positionals.length > 0 || make) return complain(`--list stands alone.\n\n${HELP}`)
  const { campaign } = await openCampaign(root, tool)
  const unknown = campaign.problems.find(({ code }) => code === 'history/unknown')
  if (unknown) return refuse(`${unknown.message}.\n${unknown.hint ?? ''}`)
  process.stdout.write(waitingText(campaign))
}

await main()
