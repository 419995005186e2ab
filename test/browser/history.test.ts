/** What git knows, in a real browser: every case on a page of its own, fit for a phone, legible in light and dark. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openCampaign } from '../../src/campaign/node/open.ts'
import { allViews } from '../../src/views/all.ts'
import { loadHandbook } from '../../src/views/handbook-load.ts'
import { tellingRepository } from '../views/history-repository.ts'
import { barriersOn, type Look, looksAt } from './axe.ts'
import { buildPages } from './build.ts'
import { type Opened, openSite } from './open.ts'
import { pagesOf, SITES } from './sites.ts'

const FOLDER = join(SITES, 'history')
const SHOTS = 'test/browser/shots'

const buildHistory = async (): Promise<void> => {
  const { top } = tellingRepository()
  const [{ campaign }, handbook] = await Promise.all([
    openCampaign(top, 'test', '2026-04-01'),
    loadHandbook(),
  ])
  const views = `${FOLDER}.json`
  mkdirSync(SITES, { recursive: true })
  writeFileSync(views, JSON.stringify({ root: top, views: allViews(campaign, handbook) }))
  buildPages(FOLDER, '/', views)
}

/** Each page that history adds to, and of the runs those where most is told. */
const LOOKED_AT =
  /^$|^(?:runs|items|gates\/fly|cards\/pull)\/$|^runs\/2026-03-(?:03|07|09|10|11|16|18)-0900-[a-z]+\/$/

/** Of the runs one stands for the others on a wide screen. */
const looksFor = (page: string): Look[] =>
  page.startsWith('runs/20') && !page.includes('2026-03-07') ? looksAt(360) : looksAt(360, 1200)

describe('history', () => {
  let site: Opened
  beforeAll(async () => {
    await buildHistory()
    mkdirSync(SHOTS, { recursive: true })
    site = await openSite(FOLDER)
  }, 300_000)
  afterAll(() => site.close())

  it('no barrier, and no scrolling sideways, in light and dark', async () => {
    const found: string[] = []
    const context = await site.browser.newContext({ bypassCSP: true })
    const tab = await context.newPage()
    for (const page of pagesOf(FOLDER).filter((path) => LOOKED_AT.test(path))) {
      await tab.goto(site.address + page)
      const barriers = await barriersOn(tab, looksFor(page), async ({ width, colorScheme }) => {
        const beyond = await tab.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        if (beyond > 0) found.push(`${page} at ${width}, ${colorScheme}: ${beyond} px sideways`)
        if (!process.env.SHOTS) return
        const name = `history-${page.replaceAll('/', '_') || 'front'}-${width}-${colorScheme}.png`
        await tab.screenshot({ path: `${SHOTS}/${name}`, fullPage: true })
      })
      found.push(...barriers.map((each) => `${page} ${each}`))
    }
    await context.close()
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
