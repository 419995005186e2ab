import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { computeCampaign } from '../src/campaign/compute.ts'
import { loadRecords } from '../src/format/node/load.ts'
import { FUNCTIONS } from '../src/functions/index.ts'
import { loadMethods } from '../src/methods/registry.ts'
import { prepareFormulas } from '../src/quantity/formula/index.ts'
import { checkText } from '../src/views/check-text.ts'
import { benchSamples } from './bench-samples.ts'
import { complain, home, readArguments, tool } from './command.ts'

const HELP = `npm run bench -- [options]     how long a check takes, by the number of runs

  --runs N          the demo's runs, again in each later year until there are so many (1000)
  --monte-carlo     as the cards ask for it; without, every card is computed to first order
  --samples N       only one run, with a log of so many samples (1000000 is what it is made for)
  --help            this text
`

const filesBelow = (root: string, folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .sort()

/** Every date, and so every name of a run or rework that begins with one, so many years later. */
const later = (text: string, years: number): string =>
  text.replace(/\b20\d\d(?=-\d\d)/g, (year) => String(Number(year) + years))

const write = (path: string, text: string | Buffer): void => {
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
}

/** Ends every round at the turn of the year, so that rounds hold as few runs as those of the demo do. */
const overhaul = (parts: readonly string[], year: number): string =>
  [
    '---',
    'title: Overhaul',
    `when: ${year}-01-02T08:00Z`,
    'by: [mlindqvist]',
    `changes: [${parts.join(', ')}]`,
    '---',
    '',
  ].join('\n')

/** The demo, repeated year by year in a folder of its own; the calibrations stay in force. Gives the last year. */
const repeatDemo = (root: string, count: number, monteCarlo: boolean): number => {
  for (const folder of ['shared', 'records'])
    cpSync(join(home, folder), join(root, folder), { recursive: true })
  // A card that asks for Monte Carlo asks for a tenth of a second and more a run, whatever the rest costs.
  for (const path of monteCarlo ? [] : filesBelow(root, 'shared/cards')) {
    const text = readFileSync(join(root, path), 'utf8')
    writeFileSync(join(root, path), text.replace(/^uncertainty: monte-carlo\n/m, ''))
  }
  for (const path of filesBelow(root, 'shared/instruments')) {
    const text = readFileSync(join(root, path), 'utf8')
    writeFileSync(join(root, path), text.replace(/\bdue: 20\d\d/g, 'due: 2999'))
  }
  // By date, as their names begin with it: what a rework refers to is there before it.
  const files = filesBelow(root, 'records')
    .filter((path) => /^records.(runs|rework)/.test(path))
    .sort((a, b) => (basename(a) < basename(b) ? -1 : 1))
  const isRun = (path: string) => /^records.runs.*\.md$/.test(path)
  const parts = readdirSync(join(root, 'shared/articles')).map((name) => name.replace(/\.md$/, ''))
  let made = files.filter(isRun).length
  let years = 0
  while (made < count) {
    years += 1
    const year = 2026 + years
    write(join(root, `records/rework/${year}-01-02-0800-overhaul.md`), overhaul([...new Set(parts)], year))
    for (const path of files) {
      if (made >= count) break
      if (isRun(path)) made += 1
      write(join(root, later(path, years)), later(readFileSync(join(root, path), 'utf8'), years))
    }
  }
  return 2026 + years
}

/** Says how long a part took, on the clock and of the processor in the main thread: that holds on a busy machine, too. */
const timed = async <T>(name: string, work: () => T | Promise<T>): Promise<T> => {
  const start = performance.now()
  const before = process.threadCpuUsage()
  const result = await work()
  const { user, system } = process.threadCpuUsage(before)
  const seconds = ((performance.now() - start) / 1000).toFixed(2)
  process.stdout.write(
    `${name.padEnd(10)}${seconds} s (${((user + system) / 1e6).toFixed(2)} s of processor)\n`,
  )
  return result
}

const main = async (): Promise<void> => {
  const parsed = readArguments(
    { runs: { type: 'string' }, samples: { type: 'string' }, 'monte-carlo': { type: 'boolean' } },
    HELP,
  )
  if (!parsed) return
  const count = Number(parsed.values.runs ?? 1000)
  const samples = Number(parsed.values.samples ?? 0)
  if (!Number.isInteger(count) || count < 1) return complain(`--runs ${parsed.values.runs} is no count.`)
  if (!Number.isInteger(samples) || samples < 0)
    return complain(`--samples ${parsed.values.samples} is no count.`)
  const root = mkdtempSync(join(tmpdir(), 'bench-'))
  try {
    if (samples > 0) return await benchSamples(root, samples, timed)
    const asOf = `${repeatDemo(root, count, parsed.values['monte-carlo'] ?? false)}-04-15`
    await timed('in all', async () => {
      const methods = await timed('start', async () => {
        await prepareFormulas()
        return loadMethods()
      })
      const { records, problems } = await timed('read', () => loadRecords(root, methods))
      const campaign = await timed('compute', () =>
        computeCampaign({ records, problems, methods, functions: FUNCTIONS, asOf, tool }),
      )
      await timed('report', () => checkText(campaign, { colour: false, textOf: () => undefined }))
      const rounds = campaign.cards.reduce((sum, card) => sum + card.rounds.length, 0)
      const errors = campaign.problems.filter(({ severity }) => severity === 'error').length
      process.stdout.write(
        `${campaign.runs.length} runs in ${rounds} rounds, ${errors} errors in the files\n`,
      )
    })
  } finally {
    process.stdout.write(`${Math.round(process.resourceUsage().maxRSS / 1e3)} MB at most\n`)
    rmSync(root, { recursive: true, force: true })
  }
}

await main()
