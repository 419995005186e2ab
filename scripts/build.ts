import { resolve } from 'node:path'
import { openCampaign } from '../src/campaign/node/open.ts'
import { canJudgeBy, readArguments, rootOf, tool } from './command.ts'
import { buildSite, siteFolder } from './site.ts'

const HELP = `npm run build -- [options]     the static site, into dist/

  --root DIR        a folder that holds records/ and shared/ (this repository)
  --as-of DATE      the day to judge by, YYYY-MM-DD (today)
  --base PATH       the path that the site will live under (/), also as BASE_PATH
  --out DIR         where the site goes (dist)
  --help            this text
`

const main = async (): Promise<void> => {
  const options = {
    root: { type: 'string' },
    'as-of': { type: 'string' },
    base: { type: 'string' },
    out: { type: 'string' },
  } as const
  const parsed = readArguments(options, HELP)
  if (!parsed) return
  const { root, 'as-of': asOf, base, out } = parsed.values
  if (!canJudgeBy(asOf)) return
  if (base) process.env.BASE_PATH = base
  if (out) process.env.OUT_DIR = resolve(out)
  const from = rootOf(root)
  const { campaign } = await openCampaign(from, tool, asOf)
  const pages = await buildSite(campaign, from)
  process.stdout.write(`${pages} pages in ${siteFolder()}\n`)
}

await main()
