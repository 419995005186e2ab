/** Every page of the built site as it is sent; those that stand for all in a real browser, fit for a phone. */
import { existsSync, globSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { fetchedBy, headingsOf, idsOf, mainTextOf, targetsOf } from './html.ts'
import { type Opened, openSite } from './open.ts'
import { BASE, BASED, htmlOf, oneOfEach, PLAIN, pagesOf, sampleOf } from './sites.ts'

const PHONE = 360
/** A phone on its side, a small laptop: layouts change between them. */
const WIDER = [720, 1000]
const SITES = [
  { where: 'at the root of a host', folder: PLAIN, base: '/' },
  { where: 'under a base path', folder: BASED, base: BASE },
] as const

/** A host that there is not, for pages that are only read. */
const HOST = 'http://site.invalid'

/** Where addresses of a page lead to no file, or to no place in it. */
const brokenLinks = (folder: string, base: string): string[] => {
  const pages = pagesOf(folder)
  const ids = new Map(pages.map((page) => [page, new Set(idsOf(htmlOf(folder, page)))]))
  const home = HOST + base
  return pages.flatMap((page) =>
    targetsOf(htmlOf(folder, page), home + page).flatMap((target) => {
      if (!target.startsWith(HOST)) return []
      if (!target.startsWith(home)) return [`${page} → ${target} leaves the base path`]
      const [path = '', anchor] = target.slice(home.length).split('#')
      const file = join(folder, decodeURIComponent(path.replace(/\?.*$/, '')))
      const there =
        existsSync(file) && (!statSync(file).isDirectory() || existsSync(join(file, 'index.html')))
      if (!there) return [`${page} → ${path} is not there`]
      const known = ids.get(path)
      return anchor && known && !known.has(decodeURIComponent(anchor))
        ? [`${page} → ${path}#${anchor} has no such place`]
        : []
    }),
  )
}

/** Visits pages on a phone; gives what went wrong. */
const visit = async (site: Opened, pages: readonly string[]): Promise<string[]> => {
  const faults: string[] = []
  const context = await site.browser.newContext({ viewport: { width: PHONE, height: 740 } })
  const tab = await context.newPage()
  const { origin } = new URL(site.address)
  let now = ''
  tab.on('pageerror', (error) => faults.push(`${now}: ${error.message}`))
  tab.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()))
      faults.push(`${now}: ${message.text()} ${message.location().url}`)
  })
  tab.on('request', (request) => {
    if (new URL(request.url()).origin !== origin) faults.push(`${now}: asks ${request.url()}`)
  })
  for (const page of pages) {
    now = page
    await tab.goto(site.address + page)
    const found = await tab.evaluate(() => ({
      sideways: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      ids: [...document.querySelectorAll('[id]')].map((element) => element.id),
    }))
    if (found.sideways > 0) faults.push(`${page}: scrolls sideways by ${found.sideways} px at ${PHONE} px`)
    const twice = found.ids.filter((id, index) => found.ids.indexOf(id) !== index)
    if (twice.length > 0) faults.push(`${page}: ids used twice: ${twice.slice(0, 3).join(', ')}`)
  }
  await context.close()
  return faults
}

describe.each(SITES)('the site $where', ({ folder, base }) => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(folder, base)
  })
  afterAll(() => site.close())

  it('has no broken link on any page', () => {
    expect(pagesOf(folder).length).toBeGreaterThan(50)
    expect(brokenLinks(folder, base)).toEqual([])
  })

  it('uses no id twice, and asks no other host, on any page', () => {
    const faults = pagesOf(folder).flatMap((page) => {
      const html = htmlOf(folder, page)
      const ids = idsOf(html)
      const twice = ids.filter((id, index) => ids.indexOf(id) !== index)
      const foreign = fetchedBy(html, HOST + base + page).filter(
        (address) => !address.startsWith(HOST) && !address.startsWith('data:'),
      )
      return [...twice, ...foreign].map((what) => `${page}: ${what}`)
    })
    const styles = globSync('**/*.css', { cwd: folder })
    expect(styles.length).toBeGreaterThan(0)
    const asking = styles.filter((file) =>
      /(?:url\(\s*["']?|@import\s+["'])(?:https?:)?\/\//.test(readFileSync(join(folder, file), 'utf8')),
    )
    expect([...faults, ...asking]).toEqual([])
  })

  it('opens in a browser without errors, foreign requests or sideways scrolling', async () => {
    // Scripts are those of a kind of page.
    expect(await visit(site, oneOfEach(folder))).toEqual([])
  })
})

describe('without scripts', () => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(PLAIN)
  })
  afterAll(() => site.close())

  it('every page has one heading, and text below it', () => {
    const empty = pagesOf(PLAIN).filter((page) => {
      const html = htmlOf(PLAIN, page)
      const headings = headingsOf(html)
      const [heading = ''] = headings
      return headings.length !== 1 || heading === '' || mainTextOf(html).length <= heading.length
    })
    expect(empty).toEqual([])
  })

  it('and without its fonts a page shows them, and fits a phone; it holds what is read without a browser', async () => {
    const context = await site.browser.newContext({
      javaScriptEnabled: false,
      viewport: { width: PHONE, height: 740 },
    })
    const tab = await context.newPage()
    // The fonts have not come yet, or never do: the wider fonts of the reader's own machine must fit as well.
    await tab.route('**/*.woff2', (route) => route.abort())
    const faults: string[] = []
    const wide = new Set(oneOfEach(PLAIN))
    for (const page of sampleOf(PLAIN)) {
      await tab.goto(site.address + page)
      const headings = await tab.locator('h1').allInnerTexts()
      const text = (await tab.locator('main').allInnerTexts()).join('')
      const { ids, targets } = await tab.evaluate(() => ({
        ids: [...document.querySelectorAll('[id]')].map((element) => element.id),
        targets: [...document.querySelectorAll('[href], [src]')]
          .filter((element) => !element.closest('svg'))
          .map((element) =>
            'href' in element ? String(element.href) : 'src' in element ? String(element.src) : '',
          ),
      }))
      const [heading = ''] = headings
      if (headings.length !== 1 || heading.trim() === '' || text.trim().length <= heading.trim().length)
        faults.push(`${page}: empty`)
      // The other tests read the files by themselves: here a browser says that they read them rightly.
      const html = htmlOf(PLAIN, page)
      expect(idsOf(html), page).toEqual(ids)
      expect(targetsOf(html, site.address + page), page).toEqual(targets)
      for (const width of wide.has(page) ? [PHONE, ...WIDER] : [PHONE]) {
        await tab.setViewportSize({ width, height: 740 })
        const beyond = await tab.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        if (beyond > 0) faults.push(`${page}: ${beyond} px sideways at ${width}`)
      }
    }
    await context.close()
    expect(faults).toEqual([])
  })
})

describe('what is sent', () => {
  it('holds no inline style, inline script or handler (so that a strict content policy holds)', () => {
    const bad = pagesOf(PLAIN).filter((page) =>
      /<style|<[^>]+\sstyle=|<[^>]+\son[a-z]+=|<script(?![^>]*\ssrc=)/i.test(htmlOf(PLAIN, page)),
    )
    expect(bad).toEqual([])
  })

  it('shows no unfinished text', () => {
    const bad = pagesOf(PLAIN).filter((page) =>
      />[^<]*(?:undefined|NaN|\[object |Infinity)[^<]*</.test(htmlOf(PLAIN, page)),
    )
    expect(bad).toEqual([])
  })

  it('keeps every page of a run under 60 kB compressed', () => {
    const sizes = pagesOf(PLAIN)
      .filter((page) => /^runs\/.+\//.test(page))
      .map((page) => ({ page, size: gzipSync(htmlOf(PLAIN, page)).length }))
    expect(sizes.filter(({ size }) => size > 60_000)).toEqual([])
  })
})
