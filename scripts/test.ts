import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { resolve } from 'node:path'
import { findBrowser } from './browser.ts'
import { home, readArguments } from './command.ts'

const HELP = `npm test     formatting, types, unit tests, then every page of the built site in a real browser

  --unit            without the browser
  --help            this text

The last line is the count: N passed, N failed.
`

type Count = { readonly passed: number; readonly failed: number }

const bin = (name: string): string => resolve(home, 'node_modules/.bin', name)

/** A tool that has no count of its own counts as one. */
const once = (title: string, command: string, args: readonly string[]): Count => {
  process.stdout.write(`\n${title}\n`)
  const { status } = spawnSync(bin(command), args, { cwd: home, stdio: 'inherit' })
  return status === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }
}

const numberIn = (report: unknown, key: string): number => {
  if (typeof report !== 'object' || report === null) return 0
  const value: unknown = Object.entries(report).find(([name]) => name === key)?.[1]
  return typeof value === 'number' ? value : 0
}

/** Vitest says in a file how many tests there were; a run that ends without one has failed. */
const suite = (title: string, name: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Count => {
  process.stdout.write(`\n${title}\n`)
  const file = resolve(home, `.cache/tests-${name}.json`)
  mkdirSync(resolve(home, '.cache'), { recursive: true })
  rmSync(file, { force: true })
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${file}`]
  const { status } = spawnSync(bin('vitest'), ['run', ...args, ...reporters], {
    cwd: home,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  })
  if (!existsSync(file)) return { passed: 0, failed: 1 }
  const report: unknown = JSON.parse(readFileSync(file, 'utf8'))
  const failed = numberIn(report, 'numFailedTests')
  return { passed: numberIn(report, 'numPassedTests'), failed: status !== 0 && failed === 0 ? 1 : failed }
}

const main = (): void => {
  const parsed = readArguments({ unit: { type: 'boolean' } }, HELP)
  if (!parsed) return
  const counts: Count[] = [
    once('Formatting and lint', 'biome', ['check', '.']),
    once('Types', 'tsc', ['--noEmit']),
    suite('Unit tests', 'unit', []),
  ]
  if (!parsed.values.unit) {
    counts.push(once('Types of the pages', 'astro', ['check', '--tsconfig', 'src/tsconfig.json']))
    const browser = findBrowser()
    counts.push(
      browser
        ? suite('Browser tests', 'browser', ['--config', 'test/browser/vitest.config.ts'], {
            CHROMIUM: browser,
          })
        : { passed: 0, failed: 1 },
    )
  }
  const passed = counts.reduce((sum, count) => sum + count.passed, 0)
  const failed = counts.reduce((sum, count) => sum + count.failed, 0)
  process.stdout.write(`\n${passed} passed, ${failed} failed\n`)
  process.exitCode = failed > 0 ? 1 : 0
}

main()
