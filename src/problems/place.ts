/** From offsets in a text to lines and columns, which both count from 1. */
import type { Place } from './types.ts'

/** The place of `[start, end)` in the text of a file; offsets outside the text are brought to its nearest end. */
export function placeOf(file: string, text: string, start: number, end: number, part: Place['part']): Place {
  const from = Math.min(Math.max(start, 0), text.length)
  const to = Math.min(Math.max(end, from), text.length)
  const first = lineAndColumn(text, from)
  const last = lineAndColumn(text, to)
  return {
    file,
    line: first.line,
    column: first.column,
    endLine: last.line,
    endColumn: last.column,
    part,
  }
}

/** The file as a whole: its first character. */
export function placeOfFile(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1, part: 'file' }
}

function lineAndColumn(text: string, offset: number): { line: number; column: number } {
  let line = 1
  let start = 0
  for (let at = text.indexOf('\n'); at >= 0 && at < offset; at = text.indexOf('\n', at + 1)) {
    line++
    start = at + 1
  }
  const mark = line === 1 && text.charCodeAt(0) === 0xfeff && offset > 0 ? 1 : 0
  return { line, column: offset - start - mark + 1 }
}
