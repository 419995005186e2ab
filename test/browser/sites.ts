/** Where the tested sites lie, and the pages in each. */
import { readdirSync } from 'node:fs'
import { resolve } from 'node:path'

export const PLAIN = resolve('.cache/browser/plain')
export const BASED = resolve('.cache/browser/based')
export const BASE = '/some/base/'

/** Addresses of all pages within a built site, without its base path. */
export const pagesOf = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => file.endsWith('index.html'))
    .map((file) => file.replace(/index\.html$/, ''))
    .sort()

/** One page of each kind, by the shape of its address. */
export const oneOfEach = (pages: readonly string[]): string[] => {
  const found = new Map<string, string>()
  for (const page of pages) {
    const [first = '', second = '', third = ''] = page.split('/')
    const below = third && ['cards', 'runs', 'gates'].includes(first) ? `/${third}` : ''
    const kind =
      first === 'handbook'
        ? `${first}/${second}${third ? '/one' : ''}`
        : second
          ? `${first}/one${below}`
          : first
    if (!found.has(kind)) found.set(kind, page)
  }
  return [...found.values()]
}
