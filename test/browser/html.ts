/** Reads the HTML of the site without a browser: whole tags, attributes in double quotes, as Astro writes them. */

type Tag = { readonly name: string; readonly attributes: ReadonlyMap<string, string> }

const TAG = /<([a-z][\w-]*)((?:\s+[^\s"'<>/=]+(?:\s*=\s*"[^"]*")?)*)\s*\/?>/gi
const ATTRIBUTE = /([^\s"'<>/=]+)(?:\s*=\s*"([^"]*)")?/g

const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }

const decoded = (text: string): string =>
  text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi, (whole, decimal, hexadecimal, name) => {
    if (decimal) return String.fromCodePoint(Number(decimal))
    if (hexadecimal) return String.fromCodePoint(Number.parseInt(hexadecimal, 16))
    return NAMED[name] ?? whole
  })

const withoutComments = (html: string): string => html.replace(/<!--[\s\S]*?-->/g, '')
const withoutDrawings = (html: string): string => html.replace(/<svg\b[\s\S]*?<\/svg>/g, '')

const tagsOf = (html: string): Tag[] =>
  [...withoutComments(html).matchAll(TAG)].map(([, name = '', attributes = '']) => ({
    name: name.toLowerCase(),
    attributes: new Map(
      [...attributes.matchAll(ATTRIBUTE)].map(([, key = '', value = '']) => [
        key.toLowerCase(),
        decoded(value),
      ]),
    ),
  }))

const valuesOf = (tags: readonly Tag[], ...names: readonly string[]): string[] =>
  tags.flatMap(({ attributes }) => {
    const name = names.find((each) => attributes.has(each))
    return name === undefined ? [] : [attributes.get(name) ?? '']
  })

/** Every `id`, in order. */
export const idsOf = (html: string): string[] => valuesOf(tagsOf(html), 'id')

/** Every `href` or `src` outside of drawings, as an address within a page of that address, in order. */
export const targetsOf = (html: string, page: string): string[] =>
  valuesOf(tagsOf(withoutDrawings(html)), 'href', 'src').map((target) => new URL(target, page).href)

/** What a browser fetches by itself for such a page: styles, scripts, icons, pictures. */
export const fetchedBy = (html: string, page: string): string[] =>
  valuesOf(
    tagsOf(html).filter(({ name }) => !['a', 'area', 'base'].includes(name)),
    'href',
    'xlink:href',
    'src',
    'data',
    'poster',
  ).map((target) => new URL(target, page).href)

const textOf = (html: string): string => decoded(html.replace(/<[^>]*>/g, ' ')).trim()

export const headingsOf = (html: string): string[] =>
  [...html.matchAll(/<h1\b[^>]*>([\s\S]*?)<\/h1>/g)].map(([, inner = '']) => textOf(inner))

export const mainTextOf = (html: string): string =>
  textOf(/<main\b[^>]*>([\s\S]*)<\/main>/.exec(html)?.[1] ?? '')

/** Characters of the longest run of text without a place to break; a tag counts as one. */
export const longestWord = (html: string): number =>
  textOf(html)
    .split(/[\s\u200b-]+/)
    .reduce((most, word) => Math.max(most, word.length), 0)
