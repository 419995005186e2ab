/** The prose of a run: what was seen, a line each with its time. */

const HEAD = '## Observed'

/** Adds `- text` at the end of the list under “Observed”, which is begun where there is none. */
export const observe = (body: string, text: string): string => {
  const entry = `- ${text.replace(/\s+/g, ' ').trim()}`
  const lines = body.trimEnd() === '' ? [] : body.trimEnd().split('\n')
  const head = lines.findIndex((line) => line.trim() === HEAD)
  if (head < 0) return [HEAD, entry, ...(lines.length > 0 ? ['', ...lines] : [])].join('\n')
  // Entries may go on over several lines; the list ends at a blank line.
  const blank = lines.findIndex((line, index) => index > head && line.trim() === '')
  const end = blank < 0 ? lines.length : blank
  return lines.toSpliced(end, 0, entry).join('\n')
}

const TYPED_IN = /^- Typed in from the paper sheet on \d{4}-\d{2}-\d{2}\.\n?/m

/** Readings from a paper sheet say so, with the day on which they were typed in; null takes the line out. */
export const typedIn = (body: string, day: string | null): string => {
  const bare = body.replace(TYPED_IN, '').trimEnd()
  return day === null ? bare : observe(bare, `Typed in from the paper sheet on ${day}.`)
}

export const isTypedIn = (body: string): boolean => TYPED_IN.test(body)
