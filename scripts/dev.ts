import { watch } from 'node:fs'
import { join, resolve } from 'node:path'
import { dev } from 'astro'
import { openCampaign } from '../src/campaign/node/open.ts'
import { checkText } from '../src/views/check-text.ts'
import { home, readArguments, tool } from './command.ts'
import { writeViews } from './site.ts'

const HELP = `npm run dev -- [options]     site and verdicts follow each save of a record

  --root DIR        a folder that holds records/ and shared/ (this repository)
  --port N          where to serve (4331)
  --help            this text
`

/** Editors save in several steps; one look after the last is enough. */
const QUIET_MS = 150

const main = async (): Promise<void> => {
  const parsed = readArguments({ root: { type: 'string' }, port: { type: 'string' } }, HELP)
  if (!parsed) return
  const root = parsed.values.root ? resolve(parsed.values.root) : home
  const port = Number(parsed.values.port ?? 4331)
  const refresh = async () => {
    const { campaign, textOf } = await openCampaign(root, tool)
    process.stdout.write(
      checkText(campaign, { colour: process.stdout.isTTY === true && !process.env.NO_COLOR, textOf }),
    )
    await writeViews(campaign, root)
  }
  const begin = () => dev({ root: home, logLevel: 'warn', server: { port } })
  await refresh()
  let server = await begin()
  process.stdout.write(`http://localhost:${port}/ follows each save (Ctrl-C ends it)\n`)

  let timer: NodeJS.Timeout | undefined
  let working = Promise.resolve()
  const changed = () => {
    clearTimeout(timer)
    timer = setTimeout(() => {
      // Paths of pages are known at the start only, so new records need a new beginning.
      working = working.then(async () => {
        await refresh()
        await server.stop()
        server = await begin()
      })
    }, QUIET_MS)
  }
  for (const folder of ['records', 'shared']) watch(join(root, folder), { recursive: true }, changed)
}

await main()
