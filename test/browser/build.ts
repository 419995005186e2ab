/** Builds the site twice before the browser tests: for a host of its own, and for a folder of a host. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { allViews } from '../../src/views/all.ts'
import { loadHandbook } from '../../src/views/handbook-load.ts'
import { BASE, BASED, PLAIN } from './sites.ts'

const VIEWS = resolve('.cache/browser/views.json')

/** The environment of a shell: what the test runner adds to it must not reach the build. */
const environment = (): NodeJS.ProcessEnv =>
  Object.fromEntries(
    Object.entries(process.env).filter(
      ([name]) => !/^(?:VITEST|NODE_ENV|MODE|DEV|PROD|SSR|BASE_URL|TEST)/.test(name),
    ),
  )

export const build = (out: string, base: string, views = VIEWS): void => {
  execFileSync(process.execPath, ['node_modules/astro/bin/astro.mjs', 'build', '--silent'], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...environment(), VIEWS_FILE: views, OUT_DIR: out, BASE_PATH: base },
  })
}

export default async (): Promise<void> => {
  // A site that was built before can be tested again without building (SITE_BUILT=1).
  if (process.env.SITE_BUILT) return
  const root = resolve('.')
  const [{ campaign }, handbook] = await Promise.all([
    openCampaign(root, 'test', '2026-04-20'),
    loadHandbook(),
  ])
  mkdirSync(dirname(VIEWS), { recursive: true })
  writeFileSync(VIEWS, JSON.stringify({ root, views: allViews(campaign, handbook) }))
  build(PLAIN, '/')
  build(BASED, BASE)
}
