/** A Markdown file with front matter, taken apart: the YAML between two lines `---`, and the prose below. */
import type { Fault, Result } from '../quantity/types.ts'

export type FrontMatter = {
  readonly yaml: string
  /** Offset of `yaml` in the text of the file. */
  readonly start: number
  readonly body: string
  /** Offset of `body` in the text of the file. */
  readonly bodyStart: number
}

const FENCE = /^---[ \t]*\r?$/

/**
 * The first line must be `---`, and a later line `---` closes the front matter. A byte order mark and CRLF change
 * nothing. Everything else that looks like a fence is refused, because readers differ in what they make of it:
 * some run `---js` as a program, some take four dashes or a blank first line for "no front matter".
 */
export function splitFrontMatter(text: string): Result<FrontMatter, Fault> {
  const mark = text.charCodeAt(0) === 0xfeff ? 1 : 0
  if (text.slice(mark).trim() === '') {
    return fault(
      'file/empty',
      'the file is empty',
      0,
      0,
      'a record begins with a line `---`, fields, and a line `---`',
    )
  }
  const firstEnd = lineEnd(text, mark)
  const first = text.slice(mark, firstEnd)
  if (!FENCE.test(first)) return openingFault(text, first, mark)
  const start = firstEnd + 1
  for (let at = start; at < text.length; at = lineEnd(text, at) + 1) {
    if (!text.startsWith('---', at)) continue
    const end = lineEnd(text, at)
    const line = text.slice(at, end)
    if (FENCE.test(line)) return { ok: true, value: taken(text, start, at, end) }
    const span = line.trimEnd().length
    return fault(
      'front-matter/fence',
      `the line \`${line.trim()}\` begins with three dashes but is not a closing \`---\``,
      at,
      at + span,
      'put nothing but `---` on the line that closes the front matter; prose begins on the next line',
    )
  }
  return fault(
    'front-matter/not-closed',
    'the front matter is not closed',
    mark,
    mark + 3,
    'put a line `---` between the fields and the prose',
  )
}

function taken(text: string, start: number, close: number, end: number): FrontMatter {
  const bodyStart = Math.min(end + 1, text.length)
  return { yaml: text.slice(start, close), start, body: text.slice(bodyStart), bodyStart }
}

function openingFault(text: string, first: string, mark: number): Result<FrontMatter, Fault> {
  const end = mark + Math.max(1, first.trimEnd().length)
  if (/^---+[ \t]*\r?$/.test(first)) {
    const message = `the first line has ${first.trimEnd().length} dashes`
    return fault(
      'front-matter/fence',
      message,
      mark,
      end,
      'begin the file with a line of exactly three dashes, `---`',
    )
  }
  if (first.startsWith('---')) {
    const word = first.slice(3).trim()
    const message = `the first line has \`${word}\` after the dashes`
    return fault(
      'front-matter/fence',
      message,
      mark,
      end,
      'begin the file with `---` alone: front matter is always YAML',
    )
  }
  const blank = first.trim() === '' && /^\s*---/.test(text.slice(mark))
  const message = blank
    ? 'there is a blank line before the front matter'
    : 'the file does not begin with front matter'
  const hint = blank
    ? 'delete the blank lines before `---`: it must be the first line of the file'
    : 'begin the file with a line `---`, then fields such as `title: …`, then a line `---`'
  return fault('front-matter/missing', message, mark, end, hint)
}

function lineEnd(text: string, from: number): number {
  const at = text.indexOf('\n', from)
  return at < 0 ? text.length : at
}

function fault(
  code: string,
  message: string,
  start: number,
  end: number,
  hint: string,
): { ok: false; error: Fault } {
  return { ok: false, error: { code, message, start, end, hint } }
}
