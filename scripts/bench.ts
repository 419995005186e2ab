import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { openCampaign } from '../src/campaign/node/open.ts'
import { complain, home, readArguments, tool } from './command.ts'

const HELP = `npm run bench -- [options]     how long a check takes, by the number of runs

  --runs N          copies of the demo's runs to make up to this number (1000)
  --help            this text
`

type Template = { readonly month: string; readonly id: string; readonly text: string }

const templates = (): Template[] => {
  const folder = join(home, 'records/runs')
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name: month }) =>
      readdirSync(join(folder, month))
        .filter((file) => file.endsWith('.md'))
        .map((file) => ({
          month,
          id: file.slice(0, -3),
          text: readFileSync(join(folder, month, file), 'utf8'),
        })),
    )
    .filter(({ text }) => !/\bfile:/.test(text))
}

/** The demo with its runs repeated under other names, in a folder of its own. */
const manyRuns = (count: number): string => {
  const root = mkdtempSync(join(tmpdir(), 'bench-'))
  cpSync(join(home, 'shared'), join(root, 'shared'), { recursive: true })
  cpSync(join(home, 'records'), join(root, 'records'), { recursive: true })
  const all = templates()
  for (let made = all.length; made < count; made += 1) {
    const { month, id, text } = all[made % all.length] as Template
    const folder = join(root, 'records/runs', month)
    mkdirSync(folder, { recursive: true })
    writeFileSync(join(folder, `${id}-${Math.floor(made / all.length)}.md`), text)
  }
  return root
}

const main = async (): Promise<void> => {
  const parsed = readArguments({ runs: { type: 'string' } }, HELP)
  if (!parsed) return
  const count = Number(parsed.values.runs ?? 1000)
  if (!Number.isInteger(count) || count < 1) return complain(`--runs ${parsed.values.runs} is no count.`)
  const root = manyRuns(count)
  try {
    const start = performance.now()
    const before = process.cpuUsage()
    const { campaign } = await openCampaign(root, tool, '2026-04-15')
    const seconds = (performance.now() - start) / 1000
    const { user, system } = process.cpuUsage(before)
    process.stdout.write(
      `${campaign.runs.length} runs checked in ${seconds.toFixed(2)} s (${((user + system) / 1e6).toFixed(2)} s of processor), ${Math.round(process.memoryUsage().rss / 1e6)} MB\n`,
    )
  } finally {
    rmSync(root, { recursive: true, force: true })
  }
}

await main()
