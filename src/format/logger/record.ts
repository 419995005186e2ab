/**
 * One record of a delimited text at a time, as spans into the text: nothing is cut out until somebody asks. Cells in
 * double quotes may hold delimiters, line ends and `""` for a quote (RFC 4180); blanks around a cell do not count.
 */
import type { Delimiter } from './types.ts'

/** Where the next record begins, and the spans of the cells of the last one. One object serves a whole file. */
export type Cursor = {
  /** Offset behind the last record. */
  at: number
  /** Offset of the last record. */
  start: number
  count: number
  /** start, end, start, end … of the cells, quotes taken off. */
  readonly spans: number[]
  /** Offset of a quote that is never closed, −1 where all are. */
  open: number
  /** Offset of what stands behind a closing quote, −1 where nothing does. */
  behind: number
}

export const cursorAt = (at: number): Cursor => ({ at, start: at, count: 0, spans: [], open: -1, behind: -1 })

const QUOTE = 34
const NEWLINE = 10
const RETURN = 13
const BLANK = 32
const ZERO = 48
const NINE = 57
const TAB = 9
const NO_BREAK = 0xa0

/** Reads the record at `cursor.at`. At the end of the text it gives a record without a cell. */
export function nextRecord(text: string, cursor: Cursor, delimiter: Delimiter): void {
  const blanks = delimiter === ' '
  const stop = delimiter.charCodeAt(0)
  // A tab is a blank around a cell, and parts cells where any blank does.
  const tab = stop === TAB ? NO_BREAK : TAB
  const stopToo = blanks ? TAB : stop
  const { spans } = cursor
  const { length } = text
  let at = cursor.at
  let count = 0
  cursor.start = at
  while (at < length) {
    let code = text.charCodeAt(at)
    while (code === BLANK || code === tab || code === NO_BREAK) code = text.charCodeAt(++at)
    // Blanks at the end of a line are no delimiter.
    if (blanks && (code === NEWLINE || code === RETURN || at >= length)) break
    const start = at
    if (code === QUOTE) {
      const end = closingQuote(text, at, cursor)
      spans[2 * count] = start + 1
      spans[2 * count + 1] = end
      at = Math.min(end + 1, length)
      for (; at < length; at++) {
        code = text.charCodeAt(at)
        if (code === stop || code === NEWLINE || code === RETURN || code === stopToo) break
        if (!isBlank(code) && cursor.behind < 0) cursor.behind = at
      }
    } else {
      for (; at < length; at++) {
        code = text.charCodeAt(at)
        // Most signs are figures, and none of them parts anything.
        if (code >= ZERO && code <= NINE) continue
        if (code === stop || code === NEWLINE || code === RETURN || code === stopToo) break
      }
      let end = at
      while (end > start && isBlank(text.charCodeAt(end - 1))) end--
      spans[2 * count] = start
      spans[2 * count + 1] = end
    }
    count++
    if (at >= length || code === NEWLINE || code === RETURN) break
    at++
    // A delimiter that ends the text opens a last, empty cell; before a line end the loop does so.
    if (at === length && !blanks) {
      spans[2 * count] = at
      spans[2 * count + 1] = at
      count++
    }
  }
  if (text.charCodeAt(at) === RETURN && text.charCodeAt(at + 1) === NEWLINE) at++
  cursor.count = count
  cursor.at = Math.min(at + 1, length)
}

/** Offset of the quote that closes the one at `at`; the end of the text where none does. */
function closingQuote(text: string, at: number, cursor: Cursor): number {
  let end = text.indexOf('"', at + 1)
  while (end >= 0 && text.charCodeAt(end + 1) === QUOTE) end = text.indexOf('"', end + 2)
  if (end >= 0) return end
  if (cursor.open < 0) cursor.open = at
  return text.length
}

const isBlank = (code: number) => code === BLANK || code === TAB || code === NO_BREAK

/** A record with nothing on its line. */
export const isBlankRecord = ({ count, spans }: Cursor): boolean =>
  count === 0 || (count === 1 && spans[0] === spans[1])

/** The text of a cell by its span; a doubled quote inside quotes is one. */
export function cellText(text: string, start: number, end: number): string {
  const cell = text.slice(start, end)
  return text.charCodeAt(start - 1) === QUOTE ? cell.replaceAll('""', '"') : cell
}

/** The texts of the record that the cursor has just read. */
export const cellsOf = (text: string, { count, spans }: Cursor): string[] =>
  Array.from({ length: count }, (_, cell) =>
    cellText(text, spans[2 * cell] as number, spans[2 * cell + 1] as number),
  )
