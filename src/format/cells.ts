/** Lines taken apart into cells: by blanks and tabs, as in a readings table. */
import type { ReadingColumn } from './types.ts'

/**
 * Spans of the cells of a line as a flat list `start, end, start, end …`. At most `limit` cells: the last takes
 * the rest of the line with its blanks.
 */
export function blankCells(line: string, limit: number): number[] {
  const spans: number[] = []
  const end = line.trimEnd().length
  let at = 0
  while (at < end) {
    while (at < end && isBlank(line.charCodeAt(at))) at++
    const start = at
    if (spans.length / 2 === limit - 1) at = end
    else while (at < end && !isBlank(line.charCodeAt(at))) at++
    spans.push(start, at)
  }
  return spans
}

const isBlank = (code: number) => code === 32 || code === 9 || code === 0xa0

/** One cell as written, without making the texts of all the others. */
export const cellAt = (column: ReadingColumn, row: number): string =>
  (column.cell ? column.cell(row) : column.cells[row]) ?? ''

/** The texts of a line's cells. */
export function cellTexts(line: string, spans: readonly number[]): string[] {
  const cells: string[] = []
  for (let at = 0; at < spans.length; at += 2) cells.push(line.slice(spans[at], spans[at + 1]))
  return cells
}
