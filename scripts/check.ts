import { writeFileSync } from 'node:fs'
import { openCampaign } from '../src/campaign/node/open.ts'
import type { GateState } from '../src/campaign/types.ts'
import { printAnnotation } from '../src/problems/printers/annotation.ts'
import { sortProblems } from '../src/problems/sort.ts'
import { checkJson } from '../src/views/check-json.ts'
import { checkText } from '../src/views/check-text.ts'
import { campaignRoot, canJudgeBy, complain, readArguments, tool } from './command.ts'

const HELP = `npm run check -- [options]     what the records say: verdicts, gates, problems

  --json            one JSON object and nothing else (npm run -s check -- --json)
  --out FILE        write there instead of printing
  --gate ID         exit status 3 unless that gate is clear, or released and not overtaken
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --as-of DATE      the day to judge by, YYYY-MM-DD (today)
  --help            this text

Exit status: 0 no errors in the files; 1 errors; 2 wrong call; 3 the gate is not open.
A failing verdict is a result, not an error.
`

const open = (gate: GateState): boolean =>
  gate.state === 'clear' || (gate.state === 'released' && !gate.overtaken)

const main = async (): Promise<void> => {
  const parsed = readArguments(
    {
      json: { type: 'boolean' },
      out: { type: 'string' },
      gate: { type: 'string' },
      root: { type: 'string' },
      'as-of': { type: 'string' },
    },
    HELP,
  )
  if (!parsed) return
  const { json, out, gate: gateId, root: folder, 'as-of': asOf } = parsed.values
  const root = campaignRoot(folder, HELP)
  if (root === null || !canJudgeBy(asOf)) return
  const { campaign, textOf } = await openCampaign(root, tool, asOf)
  const gate = campaign.gates.find((each) => each.id === gateId)
  if (gateId !== undefined && !gate) {
    const known = campaign.gates.map((each) => each.id).join(', ') || 'none'
    return complain(`There is no gate ${gateId}; known: ${known}.`)
  }

  const colour = process.stdout.isTTY === true && !process.env.NO_COLOR && out === undefined
  const text = json
    ? `${JSON.stringify(checkJson(campaign), null, 1)}\n`
    : checkText(campaign, { colour, textOf })
  if (out === undefined) process.stdout.write(text)
  else writeFileSync(out, text)
  if (process.env.GITHUB_ACTIONS && !json) {
    process.stdout.write(
      sortProblems(campaign.problems)
        .map((problem) => `${printAnnotation(problem)}\n`)
        .join(''),
    )
  }
  if (campaign.problems.some((problem) => problem.severity === 'error')) process.exitCode = 1
  else if (gate && !open(gate)) process.exitCode = 3
}

await main()
