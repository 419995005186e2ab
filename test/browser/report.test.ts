/** The reports on paper: A4 and Letter, no page blank, no row torn apart or cut off, page n of m on each. */
import { inflateSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { PLAIN, reportsOf } from './sites.ts'

const reports = reportsOf(PLAIN)

/** Sizes of the sheets after ISO 216 and ANSI/ASME Y14.1 (letter), less the margins of the style sheet, in mm. */
const SHEETS = [
  { format: 'A4', width: 210 - 36, height: 297 - 32 },
  { format: 'Letter', width: 215.9 - 36, height: 279.4 - 32 },
] as const
const pixels = (millimetres: number): number => (millimetres / 25.4) * 96

/** How many pieces of text each page of a PDF draws: its objects are plain, the content of a page is deflated. */
const textsOfPages = (pdf: Buffer): number[] => {
  const plain = pdf.toString('latin1')
  const contentOf = (number: string): string => {
    const start = plain.search(new RegExp(`(?:^|\\n)${number} 0 obj`))
    const from = plain.indexOf('stream\n', start) + 'stream\n'.length
    const length = Number(/\/Length (\d+)/.exec(plain.slice(start, from))?.[1])
    return inflateSync(pdf.subarray(from, from + length)).toString('latin1')
  }
  const pages = [...plain.matchAll(/\/Type\s*\/Page\b[^s][\s\S]*?endobj/g)].map(([object]) => object)
  return pages.map((object) => {
    const number = /\/Contents (\d+) 0 R/.exec(object)?.[1] ?? ''
    return contentOf(number).match(/\bT[jJ]\b/g)?.length ?? 0
  })
}

type Fault = { readonly what: string; readonly text: string }

/** In the layout for print: what is wider than the sheet, and rows and figures that may break or are too high to fit. */
const faultsOf = (tab: Page, height: number): Promise<Fault[]> =>
  tab.evaluate((most) => {
    const faults: Fault[] = []
    const right = document.documentElement.clientWidth + 1
    const shown = [...document.querySelectorAll('main *')].filter(
      (element) => element.getClientRects().length > 0 && !element.closest('svg, .unseen, details'),
    )
    for (const element of shown) {
      const text = (element.textContent ?? '').trim().slice(0, 60)
      if (element.getBoundingClientRect().right > right)
        faults.push({ what: `${element.tagName} too wide`, text })
      if (!element.matches('tr, figure')) continue
      if (getComputedStyle(element).breakInside !== 'avoid') faults.push({ what: 'may break', text })
      if (element.getBoundingClientRect().height > most) faults.push({ what: 'too high', text })
    }
    return faults
  }, height)

let site: Opened
beforeAll(async () => {
  site = await openSite(PLAIN)
})
afterAll(() => site.close())

describe('the reports', () => {
  it('are there for gates, and for runs of every method', () => {
    expect(reports.filter((page) => page.startsWith('gates/')).length).toBeGreaterThan(2)
    expect(reports.filter((page) => page.startsWith('runs/')).length).toBeGreaterThan(12)
  })

  it('fit on either sheet: nothing cut off at the side, no row or figure torn apart, no blank page', async () => {
    const tab = await site.browser.newPage()
    await tab.emulateMedia({ media: 'print' })
    for (const report of reports) {
      await tab.goto(site.address + report)
      for (const { format, width, height } of SHEETS) {
        const where = `${report} on ${format}`
        await tab.setViewportSize({ width: Math.floor(pixels(width)), height: 900 })
        expect(await faultsOf(tab, pixels(height)), where).toEqual([])
        const texts = textsOfPages(await tab.pdf({ format }))
        expect(texts.length, where).toBeGreaterThan(1)
        // The running head and the number of the page are a handful.
        expect(Math.min(...texts), `${where}: ${texts.join(', ')}`).toBeGreaterThan(8)
      }
    }
    await tab.close()
  })
})
