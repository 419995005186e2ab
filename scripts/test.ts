import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { findBrowser } from './browser.ts'
import { home, readArguments } from './command.ts'

const HELP = `npm test     formatting, types, unit tests, then the built site in a real browser

  --unit            without the browser
  --every-page      every page in the browser, and not only those that stand for all (some minutes more)
  --help            this text

The last line is the count: N passed, N failed.
`

type Count = { readonly passed: number; readonly failed: number }

const PASSED: Count = { passed: 1, failed: 0 }
const FAILED: Count = { passed: 0, failed: 1 }

const bin = (name: string): string => resolve(home, 'node_modules/.bin', name)

/** Runs a tool and says whether it was content; what it prints is shown at once, or whole when it has ended. */
const run = (
  title: string,
  command: string,
  args: readonly string[],
  shown: 'at once' | 'at the end',
  env: NodeJS.ProcessEnv = {},
): Promise<boolean> =>
  new Promise((done) => {
    const heading = `\n${title}\n`
    if (shown === 'at once') process.stdout.write(heading)
    const child = spawn(bin(command), args, {
      cwd: home,
      stdio: shown === 'at once' ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ...env },
    })
    const printed: Buffer[] = []
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (piece: Buffer) => printed.push(piece))
    child.on('error', (error) => printed.push(Buffer.from(`${error.message}\n`)))
    child.on('close', (status) => {
      if (shown === 'at the end') process.stdout.write(heading + Buffer.concat(printed).toString())
      done(status === 0)
    })
  })

/** A tool that has no count of its own counts as one. */
const once = async (title: string, command: string, args: readonly string[]): Promise<Count> =>
  (await run(title, command, args, 'at the end')) ? PASSED : FAILED

const numberIn = (report: unknown, key: string): number => {
  if (typeof report !== 'object' || report === null) return 0
  const value: unknown = Object.entries(report).find(([name]) => name === key)?.[1]
  return typeof value === 'number' ? value : 0
}

/** Vitest says in a file how many tests there were; a run that ends without one has failed. */
const suite = async (
  title: string,
  name: string,
  args: readonly string[],
  env: NodeJS.ProcessEnv = {},
): Promise<Count> => {
  const file = resolve(home, `.cache/tests-${name}.json`)
  mkdirSync(resolve(home, '.cache'), { recursive: true })
  rmSync(file, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${file}`]
  const content = await run(title, 'vitest', ['run', ...args, ...reporters], 'at once', env)
  if (!existsSync(file)) return FAILED
  const report: unknown = JSON.parse(readFileSync(file, 'utf8'))
  const failed = numberIn(report, 'numFailedTests')
  return { passed: numberIn(report, 'numPassedTests'), failed: !content && failed === 0 ? 1 : failed }
}

/** What reads the sources only, one after the other: beside the unit tests, which leave a core of two to it. */
const readSources = async (pages: boolean): Promise<Count[]> => [
  await once('Formatting and lint', 'biome', ['check', '.']),
  await once('Types', 'tsc', ['--noEmit']),
  ...(pages ? [await once('Types of the pages', 'astro', ['check', '--tsconfig', 'src/tsconfig.json'])] : []),
]

const inBrowser = (everyPage: boolean): Promise<Count> => {
  const browser = findBrowser()
  if (!browser) return Promise.resolve(FAILED)
  const env = { CHROMIUM: browser, EVERY_PAGE: everyPage ? '1' : '' }
  return suite('Browser tests', 'browser', ['--config', 'test/browser/vitest.config.ts'], env)
}

const main = async (): Promise<void> => {
  const options = { unit: { type: 'boolean' }, 'every-page': { type: 'boolean' } } as const
  const parsed = readArguments(options, HELP)
  if (!parsed) return
  const { unit = false, 'every-page': everyPage = false } = parsed.values
  const [units, sources] = await Promise.all([suite('Unit tests', 'unit', []), readSources(!unit)])
  const counts = [units, ...sources, ...(unit ? [] : [await inBrowser(everyPage)])]
  const passed = counts.reduce((sum, count) => sum + count.passed, 0)
  const failed = counts.reduce((sum, count) => sum + count.failed, 0)
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`)
  process.exitCode = failed > 0 ? 1 : 0
}

await main()
