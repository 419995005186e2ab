/** Pages are legible to everybody (WCAG 2.2 AA as far as axe can tell), in light and dark, and look as they should. */
import { mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { oneOfEach, PLAIN, pagesOf } from './sites.ts'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const SHOTS = 'test/browser/shots'

type Finding = { readonly id: string; readonly targets: string[] }

const RUN_AXE = `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
  .then((result) => result.violations.map((each) => ({ id: each.id, targets: each.nodes.slice(0, 3).map((node) => node.target.join(' ')) })))`

describe('reading', () => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(PLAIN)
    mkdirSync(SHOTS, { recursive: true })
  })
  afterAll(() => site.close())

  it.each(['light', 'dark'] as const)(
    'axe finds nothing on one page of each kind (%s)',
    async (colorScheme) => {
      const found: { page: string; findings: Finding[] }[] = []
      for (const width of [360, 1280]) {
        const context = await site.browser.newContext({
          colorScheme,
          viewport: { width, height: 900 },
          bypassCSP: true,
        })
        const tab = await context.newPage()
        for (const page of oneOfEach(pagesOf(PLAIN))) {
          await tab.goto(site.address + page)
          await tab.evaluate(axeSource)
          const findings: Finding[] = await tab.evaluate(RUN_AXE)
          if (findings.length > 0) found.push({ page: `${page} at ${width}`, findings })
          // Pictures to look at, on demand: SHOTS=1.
          if (process.env.SHOTS)
            await tab.screenshot({
              path: `${SHOTS}/${page.replaceAll('/', '_') || 'front'}-${width}-${colorScheme}.png`,
              fullPage: true,
            })
        }
        await context.close()
      }
      expect(found).toEqual([])
    },
  )

  it('prints the verdict of a run in one colour, without navigation', async () => {
    const run = pagesOf(PLAIN).find((page) => /^runs\/20/.test(page)) ?? ''
    const context = await site.browser.newContext({ colorScheme: 'dark' })
    const tab = await context.newPage()
    await tab.goto(site.address + run)
    await tab.emulateMedia({ media: 'print', colorScheme: 'dark' })
    const stamp = tab.locator('.title-block .stamp').first()
    expect(await stamp.evaluate((element) => getComputedStyle(element).color)).toBe('rgb(0, 0, 0)')
    expect(await tab.locator('.band nav').isVisible()).toBe(false)
    await context.close()
  })
})
