/** The address of the next page, from a `Link` header (RFC 8288). */

export type NextPage =
  | { readonly kind: 'none' }
  | { readonly kind: 'next'; readonly url: string }
  /** It leads away from the API; nothing is asked there. */
  | { readonly kind: 'elsewhere'; readonly host: string }

const VALUE = String.raw`(?:"((?:[^"\\]|\\.)*)"|([^",;\s]+))`
const PARAMETER = String.raw`\s*;\s*([\w*-]+)\s*(?:=\s*${VALUE})?`
const LINK = new RegExp(`<([^>]*)>((?:${PARAMETER})*)`, 'g')

const relationsOf = (parameters: string): string[] => {
  const named = [...parameters.matchAll(new RegExp(PARAMETER, 'g'))].find(
    ([, name = '']) => name.toLowerCase() === 'rel',
  )
  return (named?.[2] ?? named?.[3] ?? '').toLowerCase().split(/\s+/)
}

/** @param from the address that was asked: the next page must lie at the same scheme, host and port */
export const nextPage = (header: string | null, from: string): NextPage => {
  for (const [, target = '', parameters = ''] of (header ?? '').matchAll(LINK)) {
    if (!relationsOf(parameters).includes('next')) continue
    const url = URL.parse(target, from)
    if (!url) return { kind: 'elsewhere', host: target.slice(0, 100) }
    return url.origin === new URL(from).origin
      ? { kind: 'next', url: url.href }
      : { kind: 'elsewhere', host: url.host }
  }
  return { kind: 'none' }
}
