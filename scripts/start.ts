import { openCampaign } from '../src/campaign/node/open.ts'
import { checkText } from '../src/views/check-text.ts'
import { readArguments, rootOf, tool } from './command.ts'
import { addressOf, serve } from './serve.ts'
import { buildSite, siteFolder } from './site.ts'

const HELP = `npm start -- [options]     check the records, build the site, serve it

  --root DIR        a folder that holds records/ and shared/ (this repository)
  --port N          where to serve (4330, or the next that is free)
  --help            this text
`

const FIRST_PORT = 4330
const PORTS_TRIED = 20

const isTaken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && (error.code === 'EADDRINUSE' || error.code === 'EACCES')

const serveSomewhere = async (first: number) => {
  for (let port = first; port < first + PORTS_TRIED; port += 1) {
    try {
      return await serve(siteFolder(), port)
    } catch (error) {
      if (!isTaken(error)) throw error
    }
  }
  return serve(siteFolder(), 0)
}

const main = async (): Promise<void> => {
  const parsed = readArguments({ root: { type: 'string' }, port: { type: 'string' } }, HELP)
  if (!parsed) return
  const root = rootOf(parsed.values.root)
  const { campaign, textOf } = await openCampaign(root, tool)
  process.stdout.write(
    checkText(campaign, { colour: process.stdout.isTTY === true && !process.env.NO_COLOR, textOf }),
  )
  process.stdout.write('\nBuilding the site …\n')
  const pages = await buildSite(campaign, root)
  const server = await serveSomewhere(Number(parsed.values.port ?? FIRST_PORT))
  process.stdout.write(`${pages} pages. Open ${addressOf(server)} (Ctrl-C ends it)\n`)
}

await main()
