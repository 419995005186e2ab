/** Building the site: the Campaign is computed once, its views written to one file, and Astro lays them out. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { build } from 'astro'
import type { Campaign } from '../src/campaign/types.ts'
import { allViews } from '../src/views/all.ts'
import { loadHandbook } from '../src/views/handbook-load.ts'
import { home } from './command.ts'

export const viewsFile = (): string => resolve(home, process.env.VIEWS_FILE ?? '.cache/views.json')

export const siteFolder = (): string => resolve(home, process.env.OUT_DIR ?? 'dist')

/** Where the pages find their views; kept out of git. Gives the addresses of all pages. */
export const writeViews = async (campaign: Campaign, root: string): Promise<readonly string[]> => {
  const views = allViews(campaign, await loadHandbook())
  const file = viewsFile()
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, JSON.stringify({ root, views }))
  return views.map((view) => view.path)
}

export const buildSite = async (campaign: Campaign, root: string): Promise<number> => {
  // Nothing here asks for a network.
  process.env.ASTRO_TELEMETRY_DISABLED = '1'
  const { length } = await writeViews(campaign, root)
  await build({ root: home, logLevel: 'warn' })
  return length
}
