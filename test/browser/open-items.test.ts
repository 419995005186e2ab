/** The list of open items: the address carries filter and order, and without scripts the whole table is there. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { PLAIN } from './sites.ts'

describe('open items', () => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(PLAIN)
  })
  afterAll(() => site.close())

  it('filters by what the address says, and writes the choice into the address', async () => {
    const tab = await site.browser.newPage()
    await tab.goto(`${site.address}items/`)
    const all = await tab.locator('tbody tr[data-kind]:visible').count()
    const kind = (await tab.locator('select[name=kind] option').allInnerTexts())[1] ?? ''
    await tab.selectOption('select[name=kind]', kind)
    const shown = await tab.locator('tbody tr[data-kind]:visible').count()
    expect(shown).toBeGreaterThan(0)
    expect(shown).toBeLessThan(all)
    expect(new URL(tab.url()).searchParams.get('kind')).toBe(kind)
    await tab.goto(tab.url())
    expect(await tab.locator('tbody tr[data-kind]:visible').count()).toBe(shown)
    expect((await tab.locator('.count').allInnerTexts())[0]).toBe(`${shown} of ${all} shown`)
    await tab.close()
  })

  it('sorts by a column, both ways, and keeps the order in the address', async () => {
    const tab = await site.browser.newPage()
    await tab.goto(`${site.address}items/`)
    const since = (): Promise<string[]> =>
      tab.locator('tbody tr[data-kind] td[data-label=since]').allInnerTexts()
    await tab.getByRole('button', { name: 'since' }).click()
    const rising = await since()
    expect(rising).toEqual([...rising].sort())
    await tab.getByRole('button', { name: 'since' }).click()
    expect(await since()).toEqual([...rising].sort().reverse())
    expect(new URL(tab.url()).searchParams.get('sort')).toBe('-since')
    await tab.close()
  })

  it('shows every item without scripts, and no dead controls', async () => {
    const context = await site.browser.newContext({ javaScriptEnabled: false })
    const tab = await context.newPage()
    await tab.goto(`${site.address}items/?kind=nothing-of-this-kind`)
    expect(await tab.locator('tbody tr[data-kind]:visible').count()).toBeGreaterThan(0)
    expect(await tab.locator('.filter').isVisible()).toBe(false)
    await context.close()
  })
})
