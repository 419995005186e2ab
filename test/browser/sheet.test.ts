/** The sheets for the hangar: one page of A4 and of Letter where they fit, black on white, with boxes to write in. */
import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { PLAIN, pagesOf } from './sites.ts'

const sheets = pagesOf(PLAIN).filter((page) => /^cards\/[^/]+\/sheet\//.test(page))

/** So many rows and columns to write in that one page cannot hold them. */
const TWO_PAGES = [
  'cards/elevator-gust-load/sheet/',
  'cards/elevator-pilot-load/sheet/',
  'cards/elevator-stiffness/sheet/',
  // Two loadings in small steps and four dials: 31 rows to write in.
  'cards/tank-structure-proof/sheet/wing-left-tank/',
  'cards/tank-structure-proof/sheet/wing-right-tank/',
]

/** Pages of a PDF: every page is one object of that type. */
const pageCount = (pdf: Buffer): number => (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length

let site: Opened
beforeAll(async () => {
  site = await openSite(PLAIN)
})
afterAll(() => site.close())

describe('the sheets', () => {
  it('are there for each card and article, linked from the card', () => {
    expect(sheets.length).toBeGreaterThan(15)
    for (const sheet of sheets) {
      const card = readFileSync(`${PLAIN}/${sheet.split('/sheet/')[0]}/index.html`, 'utf8')
      expect(card, sheet).toContain(`href="/${sheet}"`)
    }
  })

  it.each(['A4', 'Letter'] as const)(
    'print on one page of %s, but for those with too many rows',
    async (format) => {
      const tab = await site.browser.newPage()
      const counts = new Map<string, number>()
      for (const sheet of sheets) {
        await tab.goto(site.address + sheet)
        counts.set(sheet, pageCount(await tab.pdf({ format })))
      }
      await tab.close()
      expect(sheets.filter((sheet) => counts.get(sheet) !== 1)).toEqual(TWO_PAGES)
      expect(TWO_PAGES.map((sheet) => counts.get(sheet))).toEqual(TWO_PAGES.map(() => 2))
    },
  )

  it('are black on white in print, whatever the reader prefers on the screen', async () => {
    const context = await site.browser.newContext({ colorScheme: 'dark' })
    const tab = await context.newPage()
    await tab.goto(`${site.address}${sheets[0]}`)
    await tab.emulateMedia({ media: 'print', colorScheme: 'dark' })
    const colours = await tab.evaluate(() =>
      ['body', '.writing td', '.boxes li', '.strip'].map((place) => {
        const element = document.querySelector(place)
        return element ? getComputedStyle(element).color : ''
      }),
    )
    await context.close()
    for (const colour of colours) expect(['rgb(0, 0, 0)', 'rgb(51, 51, 51)']).toContain(colour)
  })

  it('have cells to write in that a pencil can fill: at least 5 mm high on paper', async () => {
    const tab = await site.browser.newPage()
    await tab.emulateMedia({ media: 'print' })
    for (const sheet of sheets) {
      await tab.goto(site.address + sheet)
      const heights = await tab.evaluate(() =>
        [...document.querySelectorAll('.writing td.empty')].map(
          (cell) => cell.getBoundingClientRect().height,
        ),
      )
      expect(heights.length, sheet).toBeGreaterThan(0)
      expect(Math.min(...heights), sheet).toBeGreaterThan((5 / 25.4) * 96)
    }
    await tab.close()
  })
})
