/** From an address within the site to one that a browser follows, under whatever base path the site is served. */
import type { Target } from './view.ts'

const OUTSIDE = /^(?:https?:|mailto:)/

/** `base` ends with a slash. Addresses that begin with `#` stay on the page. */
export const href = (to: Target, base: string): string =>
  OUTSIDE.test(to) || to.startsWith('#') ? to : base + encodeURI(to)

export const isOutside = (to: Target): boolean => OUTSIDE.test(to)

/** HTML of `prose.ts` with its addresses under the base path. */
export const withBase = (html: string, base: string): string =>
  html.replace(/(href|src)="base:/g, `$1="${base}`)
