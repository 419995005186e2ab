import { existsSync, watch } from 'node:fs'
import { join } from 'node:path'
import { dev } from 'astro'
import { openCampaign } from '../src/campaign/node/open.ts'
import { checkText } from '../src/views/check-text.ts'
import { complain, home, readArguments, rootOf, tool } from './command.ts'
import { writeViews } from './site.ts'

const HELP = `npm run dev -- [options]     site and verdicts follow each save of a record

  --root DIR        a folder that holds records/ and shared/ (this repository)
  --port N          where to serve (4331)
  --help            this text
`

/** Editors save in several steps; one look after the last is enough. */
const QUIET_MS = 150

/** What changes a page: records, what they refer to, and commits (git adds a line here at each). */
const watched = (root: string): string[] =>
  ['records', 'shared', join('.git', 'logs', 'HEAD')]
    .map((path) => join(root, path))
    .filter((path) => existsSync(path))

/** Nothing that goes wrong in one round ends the watch: the next save may mend it. */
const carryingOn = async (work: () => Promise<void>): Promise<void> => {
  try {
    await work()
  } catch (error) {
    process.stderr.write(`This save could not be shown: ${error instanceof Error ? error.message : error}\n`)
  }
}

const main = async (): Promise<void> => {
  const parsed = readArguments({ root: { type: 'string' }, port: { type: 'string' } }, HELP)
  if (!parsed) return
  const root = rootOf(parsed.values.root)
  const port = Number(parsed.values.port ?? 4331)
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    return complain(`--port ${parsed.values.port} is no port; write a number from 1 to 65535.`)
  process.env.ASTRO_TELEMETRY_DISABLED = '1'

  const refresh = async (): Promise<string> => {
    const { campaign, textOf } = await openCampaign(root, tool)
    process.stdout.write(
      checkText(campaign, { colour: process.stdout.isTTY === true && !process.env.NO_COLOR, textOf }),
    )
    return (await writeViews(campaign, root)).join('\n')
  }
  const begin = () => dev({ root: home, logLevel: 'warn', server: { port } })
  let paths = await refresh()
  let server = await begin()
  const address = `http://localhost:${server.address.port}/`

  const follow = async () => {
    const now = await refresh()
    // Addresses are known at the start only: a page that came or went needs a new beginning.
    if (now !== paths) {
      await server.stop()
      server = await begin()
      paths = now
    }
    process.stdout.write(`${address} shows it\n`)
  }
  let timer: NodeJS.Timeout | undefined
  let working = Promise.resolve()
  const changed = () => {
    clearTimeout(timer)
    timer = setTimeout(() => {
      working = working.then(() => carryingOn(follow))
    }, QUIET_MS)
  }
  for (const path of watched(root)) watch(path, { recursive: true }, changed)
  process.stdout.write(`${address} follows each save (Ctrl-C ends it)\n`)
}

await main()
