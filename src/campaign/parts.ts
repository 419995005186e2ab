/** Articles form a tree by their paths: `wing-left/tank` is a part of `wing-left`. */

/** The same part, a part of it, or what it is a part of. */
export const touches = (a: string, b: string): boolean =>
  a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`)

/** What a card covers on an article, as full paths; the whole article where it names no parts. */
export const coveredParts = (covers: readonly string[], article: string): readonly string[] =>
  covers.length === 0 ? [article] : covers.map((part) => `${article}/${part}`)
