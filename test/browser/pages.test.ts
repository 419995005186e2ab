/** Every page of the built site in a real browser: quiet, complete, and fit for a phone. */
import { existsSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Opened, openSite } from './open.ts'
import { BASE, BASED, PLAIN, pagesOf } from './sites.ts'

/** A phone, a phone on its side, a small laptop: layouts change between them. */
const WIDTHS = [360, 720, 1000]

type Seen = { readonly page: string; readonly ids: string[]; readonly targets: string[] }

/** Visits every page; gives what went wrong, and all ids and addresses in them. */
const visitAll = async (
  site: Opened,
  pages: readonly string[],
): Promise<{ faults: string[]; seen: Seen[] }> => {
  const faults: string[] = []
  const seen: Seen[] = []
  const context = await site.browser.newContext({ viewport: { width: 360, height: 740 } })
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
      targets: [...document.querySelectorAll('[href], [src]')]
        .filter((element) => !element.closest('svg'))
        .map((element) =>
          'href' in element ? String(element.href) : 'src' in element ? String(element.src) : '',
        ),
    }))
    if (found.sideways > 0) faults.push(`${page}: scrolls sideways by ${found.sideways} px at 360 px`)
    const twice = found.ids.filter((id, index) => found.ids.indexOf(id) !== index)
    if (twice.length > 0) faults.push(`${page}: ids used twice: ${twice.slice(0, 3).join(', ')}`)
    seen.push({ page, ids: found.ids, targets: found.targets })
  }
  await context.close()
  return { faults, seen }
}

/** Addresses that lead to no file, or to no place in it. */
const brokenLinks = (site: Opened, folder: string, seen: readonly Seen[]): string[] => {
  const ids = new Map(seen.map((each) => [each.page, new Set(each.ids)]))
  return seen.flatMap(({ page, targets }) =>
    targets.flatMap((target) => {
      if (!target.startsWith(new URL(site.address).origin)) return []
      if (!target.startsWith(site.address)) return [`${page} → ${target} leaves the base path`]
      const [path = '', anchor] = target.slice(site.address.length).split('#')
      const file = join(folder, decodeURIComponent(path))
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

describe.each([
  { where: 'at the root of a host', folder: PLAIN, base: '/' },
  { where: 'under a base path', folder: BASED, base: BASE },
])('the site $where', ({ folder, base }) => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(folder, base)
  })
  afterAll(() => site.close())

  it('has pages without errors, foreign requests, broken links or sideways scrolling', async () => {
    const pages = pagesOf(folder)
    expect(pages.length).toBeGreaterThan(50)
    const { faults, seen } = await visitAll(site, pages)
    expect(faults).toEqual([])
    expect(brokenLinks(site, folder, seen)).toEqual([])
  })
})

describe('without scripts', () => {
  let site: Opened
  beforeAll(async () => {
    site = await openSite(PLAIN)
  })
  afterAll(() => site.close())

  it('and without its fonts every page has its heading and its text, and fits a phone', async () => {
    const context = await site.browser.newContext({
      javaScriptEnabled: false,
      viewport: { width: 360, height: 740 },
    })
    const tab = await context.newPage()
    // The fonts have not come yet, or never do: the wider fonts of the reader's own machine must fit as well.
    await tab.route('**/*.woff2', (route) => route.abort())
    const empty: string[] = []
    const sideways: string[] = []
    for (const page of pagesOf(PLAIN)) {
      await tab.goto(site.address + page)
      const headings = await tab.locator('h1').allInnerTexts()
      const text = (await tab.locator('main').allInnerTexts()).join('')
      const [heading = ''] = headings
      if (headings.length !== 1 || heading.trim() === '' || text.trim().length <= heading.trim().length)
        empty.push(page)
      for (const width of WIDTHS) {
        await tab.setViewportSize({ width, height: 740 })
        const beyond = await tab.evaluate(
          () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
        )
        if (beyond > 0) sideways.push(`${page}: ${beyond} px at ${width}`)
      }
    }
    await context.close()
    expect(empty).toEqual([])
    expect(sideways).toEqual([])
  })
})

describe('what is sent', () => {
  const html = (page: string): string => readFileSync(join(PLAIN, page, 'index.html'), 'utf8')

  it('holds no inline style, inline script or handler (so that a strict content policy holds)', () => {
    const bad = pagesOf(PLAIN).filter((page) =>
      /<style|<[^>]+\sstyle=|<[^>]+\son[a-z]+=|<script(?![^>]*\ssrc=)/i.test(html(page)),
    )
    expect(bad).toEqual([])
  })

  it('shows no unfinished text', () => {
    const bad = pagesOf(PLAIN).filter((page) =>
      />[^<]*(?:undefined|NaN|\[object |Infinity)[^<]*</.test(html(page)),
    )
    expect(bad).toEqual([])
  })

  it('keeps every page of a run under 60 kB compressed', () => {
    const sizes = pagesOf(PLAIN)
      .filter((page) => /^runs\/.+\//.test(page))
      .map((page) => ({ page, size: gzipSync(html(page)).length }))
    expect(sizes.filter(({ size }) => size > 60_000)).toEqual([])
  })
})
