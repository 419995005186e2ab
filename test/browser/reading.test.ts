/** Pages are legible to everybody (WCAG 2.2 AA as far as axe can tell), in light and dark, and look as they should. */
import { mkdirSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { barriersOn, looksAt } from './axe.ts'
import { type Opened, openSite } from './open.ts'
import { firstOfEach, largestOfEach, PLAIN, pagesOf, smallSampleOf } from './sites.ts'

const SHOTS = 'test/browser/shots'

describe('reading', () => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(PLAIN)
    mkdirSync(SHOTS, { recursive: true })
  })
  afterAll(() => site.close())

  it.each([
    {
      what: 'the largest page of each kind, on a phone',
      pages: largestOfEach,
      looks: [{ width: 360, colorScheme: 'light' } as const],
    },
    { what: 'the first page of each kind, on a wide screen', pages: firstOfEach, looks: looksAt(1280) },
    { what: 'a sample of the others, on a phone', pages: smallSampleOf, looks: looksAt(360) },
  ])('axe finds nothing on $what', async ({ pages, looks }) => {
    const found: string[] = []
    const context = await site.browser.newContext({ bypassCSP: true })
    const tab = await context.newPage()
    const looked = pages(PLAIN)
    expect(looked.length).toBeGreaterThan(8)
    for (const page of looked) {
      await tab.goto(site.address + page)
      const barriers = await barriersOn(tab, looks, async ({ width, colorScheme }) => {
        // Pictures to look at, on demand: SHOTS=1.
        if (!process.env.SHOTS) return
        const name = `${page.replaceAll('/', '_') || 'front'}-${width}-${colorScheme}.png`
        await tab.screenshot({ path: `${SHOTS}/${name}`, fullPage: true })
      })
      found.push(...barriers.map((each) => `${page} ${each}`))
    }
    await context.close()
    expect(found).toEqual([])
  })

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
