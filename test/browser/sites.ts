/** Where the tested sites lie, the pages in each, and those worth a closer look. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { longestWord } from './html.ts'

/** A folder of its own, should several test at once. */
export const SITES = resolve(process.env.TEST_SITES ?? '.cache/browser')
export const PLAIN = join(SITES, 'plain')
export const BASED = join(SITES, 'based')
export const BASE = '/some/base/'

/** By `npm test -- --every-page`, as each night: no sample stands for the others. */
const EVERY_PAGE = process.env.EVERY_PAGE === '1'

/** Addresses of all pages within a built site, without its base path. */
export const pagesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('index.html'))
    .map((file) => file.replace(/index\.html$/, ''))
    .sort()

export const htmlOf = (folder: string, page: string): string =>
  readFileSync(join(folder, page, 'index.html'), 'utf8')

/** The kind of a page, by the shape of its address. */
const kindOf = (page: string): string => {
  const [first = '', second = '', third = ''] = page.split('/')
  if (first === 'handbook') return `${first}/${second}${third ? '/one' : ''}`
  if (first === 'runs' && second === 'month') return 'runs/month'
  const below = third && ['cards', 'runs', 'gates'].includes(first) ? `/${third}` : ''
  return second ? `${first}/one${below}` : first
}

const byKind = (pages: readonly string[]): string[][] => [...Map.groupBy(pages, kindOf).values()]

const greatest = (pages: readonly string[], measure: (page: string) => number): string[] => {
  const [first] = pages
    .map((page) => ({ page, size: measure(page) }))
    .sort((a, b) => b.size - a.size || (a.page < b.page ? -1 : 1))
  return first ? [first.page] : []
}

const everyNth = (pages: readonly string[], count: number): string[] =>
  pages.filter((_, at) => at % count === count - 1)

const once = (pages: readonly string[]): string[] => [...new Set(pages)].sort()

/** The largest page of each kind: it holds most of what there is. */
export const largestOfEach = (folder: string): string[] =>
  byKind(pagesOf(folder)).flatMap((pages) => greatest(pages, (page) => htmlOf(folder, page).length))

export const firstOfEach = (folder: string): string[] =>
  byKind(pagesOf(folder)).flatMap((pages) => pages.slice(0, 1))

/** What depends on the kind of a page only is tried on one of each. With EVERY_PAGE, on all. */
export const oneOfEach = (folder: string): string[] => (EVERY_PAGE ? pagesOf(folder) : largestOfEach(folder))

/**
 * Pages that stand for all: of each kind the first, the largest and the one with the longest word (which is what a
 * narrow screen cannot hold), and every eighth of all. With EVERY_PAGE, all.
 */
export const sampleOf = (folder: string): string[] => {
  const all = pagesOf(folder)
  if (EVERY_PAGE) return all
  const ofKinds = byKind(all).flatMap((pages) => [
    ...pages.slice(0, 1),
    ...greatest(pages, (page) => htmlOf(folder, page).length),
    ...greatest(pages, (page) => longestWord(htmlOf(folder, page))),
  ])
  return once([...ofKinds, ...everyNth(all, 8)])
}

/** A few besides the largest of each kind, for what takes long; with EVERY_PAGE, all the others. */
export const smallSampleOf = (folder: string): string[] => {
  const largest = new Set(largestOfEach(folder))
  const others = pagesOf(folder).filter((page) => !largest.has(page))
  return EVERY_PAGE ? others : everyNth(others, 32)
}

/** The first card that a page leads to from its text: of a run or its report, the card that was followed. */
const cardOf = (folder: string, page: string): string =>
  /\/cards\/([\w-]+)\//.exec(htmlOf(folder, page))?.[1] ?? ''

const methodOf = (card: string): string =>
  /^method: *(\S+)/m.exec(readFileSync(`shared/cards/${card}.md`, 'utf8'))?.[1] ?? ''

const largestOfMethods = (
  folder: string,
  pages: readonly string[],
  card: (page: string) => string,
): string[] =>
  [...Map.groupBy(pages, (page) => methodOf(card(page))).values()].flatMap((same) =>
    greatest(same, (page) => htmlOf(folder, page).length),
  )

/** Of each method the largest form; with EVERY_PAGE, the form of every card. */
export const formsOf = (folder: string): string[] => {
  const forms = pagesOf(folder).filter((page) => /^record\/.+\//.test(page))
  return EVERY_PAGE ? forms : largestOfMethods(folder, forms, (form) => form.split('/')[1] ?? '')
}

/** The report of every gate, and of each method the largest; with EVERY_PAGE, of every run. */
export const reportsOf = (folder: string): string[] => {
  const ofGates = pagesOf(folder).filter((page) => /^gates\/[^/]+\/report\//.test(page))
  const ofRuns = pagesOf(folder).filter((page) => /^runs\/[^/]+\/report\//.test(page))
  if (EVERY_PAGE) return [...ofGates, ...ofRuns]
  return [...ofGates, ...largestOfMethods(folder, ofRuns, (report) => cardOf(folder, report))]
}

/** Of each card the sheet of its first article, from which the others differ by names; with EVERY_PAGE, all. */
export const sheetsOf = (folder: string): string[] => {
  const sheets = pagesOf(folder).filter((page) => /^cards\/[^/]+\/sheet\//.test(page))
  if (EVERY_PAGE) return sheets
  const ofCards = Map.groupBy(sheets, (page) => page.split('/sheet/')[0])
  return [...ofCards.values()].flatMap((same) => same.slice(0, 1))
}
