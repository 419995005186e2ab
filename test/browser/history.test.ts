/** What git knows, in a real browser: every case on a page of its own, fit for a phone, legible in light and dark. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join, resolve } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { allViews } from '../../src/views/all.ts'
import { loadHandbook } from '../../src/views/handbook-load.ts'
import { tellingRepository } from '../views/history-repository.ts'
import { build } from './build.ts'
import { type Opened, openSite } from './open.ts'
import { pagesOf } from './sites.ts'

const FOLDER = resolve('.cache/browser/history')
const SHOTS = 'test/browser/shots'
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const RUN_AXE = `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
  .then((result) => result.violations.map((each) => each.id + ': ' + each.nodes.slice(0, 3).map((node) => node.target.join(' ')).join(', ')))`

const buildHistory = async (): Promise<void> => {
  const { top } = tellingRepository()
  const [{ campaign }, handbook] = await Promise.all([
    openCampaign(top, 'test', '2026-04-01'),
    loadHandbook(),
  ])
  const views = `${FOLDER}.json`
  mkdirSync(resolve('.cache/browser'), { recursive: true })
  writeFileSync(views, JSON.stringify({ root: top, views: allViews(campaign, handbook) }))
  build(FOLDER, '/', views)
}

/** Each page that history adds to, and of the runs those where most is told. */
const LOOKED_AT =
  /^$|^(?:runs|items|gates\/fly|cards\/pull)\/$|^runs\/2026-03-(?:03|07|09|10|11|16|18)-0900-[a-z]+\/$/

describe('history', () => {
  let site: Opened
  beforeAll(async () => {
    await buildHistory()
    mkdirSync(SHOTS, { recursive: true })
    site = await openSite(FOLDER)
  }, 300_000)
  afterAll(() => site.close())

  it.each(['light', 'dark'] as const)('no barrier, and no scrolling sideways (%s)', async (colorScheme) => {
    const found: string[] = []
    for (const width of [360, 1200]) {
      const context = await site.browser.newContext({
        colorScheme,
        viewport: { width, height: 900 },
        bypassCSP: true,
      })
      const tab = await context.newPage()
      for (const page of pagesOf(FOLDER).filter((path) => LOOKED_AT.test(path))) {
        await tab.goto(site.address + page)
        const beyond = await tab.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        if (beyond > 0) found.push(`${page} at ${width}: ${beyond} px sideways`)
        await tab.evaluate(axeSource)
        const barriers: string[] = await tab.evaluate(RUN_AXE)
        found.push(...barriers.map((each) => `${page} at ${width}: ${each}`))
        if (process.env.SHOTS)
          await tab.screenshot({
            path: `${SHOTS}/history-${page.replaceAll('/', '_') || 'front'}-${width}-${colorScheme}.png`,
            fullPage: true,
          })
      }
      await context.close()
    }
    expect(found).toEqual([])
  })

  it.each([
    ['2026-03-07-0900-pull', 'changed since'],
    ['2026-03-09-0900-pull', 'void'],
    ['2026-03-10-0900-pull', 'file gone'],
    ['2026-03-18-0900-pull', 'proposed'],
    ['2026-03-19-0900-pull', 'not committed'],
  ])('%s is stamped “%s” on its page and in the list of runs', async (id, word) => {
    const tab = await site.browser.newPage()
    await tab.goto(`${site.address}runs/${id}/`)
    expect(await tab.locator('.title-block .stamp').allInnerTexts()).toContain(word)
    await tab.goto(`${site.address}runs/`)
    const row = tab.locator('tr', { has: tab.locator(`a[href$="/runs/${id}/"]`) })
    expect(await row.locator('.stamp').allInnerTexts()).toContain(word)
    await tab.close()
  })

  it('keeps every page of a run under 60 kB compressed', () => {
    const sizes = pagesOf(FOLDER)
      .filter((page) => /^runs\/20/.test(page))
      .map((page) => gzipSync(readFileSync(join(FOLDER, page, 'index.html'))).length)
    expect(Math.max(...sizes)).toBeLessThan(60_000)
  })
})
