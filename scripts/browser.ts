/** A Chromium for the browser tests: what is installed, else Debian's package, else the usual installer. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from 'playwright-core'

const USUAL = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

const installed = (): string | undefined =>
  [process.env.CHROMIUM, ...USUAL, chromium.executablePath()].find((path) => path && existsSync(path))

const run = (command: string, args: readonly string[]): boolean =>
  spawnSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'] }).status === 0

const isRoot = (): boolean => process.getuid?.() === 0

const fetchDebian = (): boolean =>
  isRoot() &&
  existsSync('/usr/bin/apt-get') &&
  run('apt-get', ['update', '-qq']) &&
  run('apt-get', ['install', '-y', '-qq', 'chromium'])

const fetchUsual = (): boolean =>
  run(process.execPath, ['node_modules/playwright-core/cli.js', 'install', 'chromium'])

/** Path of a Chromium, fetched where there is none; null where that failed, after saying what to do. */
export const findBrowser = (): string | null => {
  const here = installed()
  if (here) return here
  process.stdout.write('No Chromium is here; fetching one …\n')
  const found = (fetchDebian() || fetchUsual()) && installed()
  if (found) return found
  process.stderr.write(
    'The browser tests need Chromium and it could not be fetched.\n' +
      'Install it (on Debian as root: apt-get install chromium; elsewhere: npx playwright-core install chromium),\n' +
      'or set CHROMIUM to the path of one, and run npm test again.\n',
  )
  return null
}
