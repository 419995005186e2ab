/** Builds the site twice before the browser tests: for a host of its own, and for a folder of a host. */
import { execFileSync } from 'node:child_process'
import { join, resolve } from 'node:path'
import { BASE, BASED, PLAIN, SITES } from './sites.ts'

const home = resolve(import.meta.dirname, '../..')
const VIEWS = join(SITES, 'views.json')

/** The day by which the tested sites judge. */
const AS_OF = '2026-04-20'

/** The environment of a shell: what the test runner adds to it must not reach the build. */
const environment = (): NodeJS.ProcessEnv =>
  Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^(?:VITEST|NODE_ENV|MODE|DEV|PROD|SSR|BASE_URL|TEST)/.test(name),
    ),
  )

const run = (args: readonly string[], more: Readonly<Record<string, string>>): void => {
  execFileSync(process.execPath, args, {
    cwd: home,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...environment(), ...more },
  })
}

/** Pages from views that lie in a file. */
export const buildPages = (out: string, base: string, views = VIEWS): void =>
  run(['node_modules/astro/bin/astro.mjs', 'build', '--silent'], {
    VIEWS_FILE: views,
    OUT_DIR: out,
    BASE_PATH: base,
  })

/** The whole way from records to pages, as people build a site, in a time zone. */
export const buildSite = (root: string, out: string, zone: string, views = VIEWS): void =>
  run(['scripts/run.mjs', 'build', '--root', root, '--as-of', AS_OF, '--out', out], {
    TZ: zone,
    VIEWS_FILE: views,
  })

export default (): void => {
  // A site that was built before can be tested again without building (SITE_BUILT=1).
  if (process.env.SITE_BUILT) return
  // West of Greenwich: `rebuild.test.ts` builds it again in the east, and every byte must be the same.
  buildSite(home, PLAIN, 'America/Denver')
  buildPages(BASED, BASE)
}
