import { writeFileSync } from 'node:fs'
import { openCampaign } from '../src/campaign/node/open.ts'
import { afterRework } from '../src/campaign/what-if.ts'
import { overtakesOf } from '../src/views/overtakes.ts'
import { overtakesText } from '../src/views/overtakes-text.ts'
import { partNames, unknownName } from '../src/views/part-names.ts'
import { campaignRoot, canJudgeBy, complain, readCall, tool } from './command.ts'

const HELP = `npm run overtakes -- <part> [options]     which passes a rework of that part would overtake

  --json            one JSON object and nothing else (npm run -s overtakes -- <part> --json)
  --out FILE        write there instead of printing
  --root DIR        a folder that holds records/ and shared/ (this repository)
  --as-of DATE      the day to judge by, YYYY-MM-DD (today)
  --help            this text

A part is an article or a part of one, as wing-left/tank. Nothing is written to the records.
Exit status: 0 done; 2 wrong call.
`

const main = async (): Promise<void> => {
  const call = readCall(
    {
      json: { type: 'boolean' },
      out: { type: 'string' },
      root: { type: 'string' },
      'as-of': { type: 'string' },
    },
    HELP,
  )
  if (!call) return
  const [part, extra] = call.positionals
  if (part === undefined || extra !== undefined) return complain(`Name one part.\n\n${HELP}`)
  const { json, out, root: folder, 'as-of': asOf } = call.values
  const root = campaignRoot(folder, HELP)
  if (root === null || !canJudgeBy(asOf)) return
  const { campaign, input } = await openCampaign(root, tool, asOf)
  const names = partNames(campaign.records)
  if (!names.includes(part)) return complain(unknownName('article or part', part, names))
  const found = overtakesOf(part, campaign, afterRework(input, [part]))
  const text = json ? `${JSON.stringify({ schema: 1, ...found }, null, 1)}\n` : overtakesText(found)
  if (out === undefined) process.stdout.write(text)
  else writeFileSync(out, text)
}

await main()
