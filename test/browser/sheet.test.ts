/** The sheets for the hangar: one page of A4 and of Letter where they fit, black on white, with boxes to write in. */
import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { PLAIN, sheetsOf } from './sites.ts'

const sheets = sheetsOf(PLAIN)

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
  it('are there for each card, linked from it', () => {
    expect(sheets.length).toBeGreaterThan(15)
    for (const sheet of sheets) {
      const card = readFileSync(`${PLAIN}/${sheet.split('/sheet/')[0]}/index.html`, 'utf8')
      expect(card, sheet).toContain(`href="/${sheet}"`)
    }
  })

  it('print on one page of A4 and of Letter, but for those with too many rows, with cells that a pencil can fill', async () => {
    const tab = await site.browser.newPage()
    await tab.emulateMedia({ media: 'print' })
    const counts: [string, number, number][] = []
    for (const sheet of sheets) {
      await tab.goto(site.address + sheet)
      const heights = await tab.evaluate(() =>
        [...document.querySelectorAll('.writing td.empty')].map(
          (cell) => cell.getBoundingClientRect().height,
        ),
      )
      // At least 5 mm high on paper.
      expect(heights.length, sheet).toBeGreaterThan(0)
      expect(Math.min(...heights), sheet).toBeGreaterThan((5 / 25.4) * 96)
      const [a4, letter] = [await tab.pdf({ format: 'A4' }), await tab.pdf({ format: 'Letter' })]
      counts.push([sheet, pageCount(a4), pageCount(letter)])
    }
    await tab.close()
    expect(counts).toEqual(sheets.map((sheet) => [sheet, ...(TWO_PAGES.includes(sheet) ? [2, 2] : [1, 1])]))
    expect(TWO_PAGES.filter((sheet) => sheets.includes(sheet)).length).toBeGreaterThan(3)
  })

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
})
