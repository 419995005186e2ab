/** The place of a cell of a table, found by taking the table apart once more. */
import { blankCells } from './cells.ts'

/** A line, blank ones too, with the offset at which it begins. */
export type TextLine = { readonly text: string; readonly start: number }

/** Row −2 is the names, −1 the units. Column −1, or one that is not there, is the whole row. */
export function cellSpan(
  lines: readonly TextLine[],
  row: number,
  column: number,
): { start: number; end: number } {
  const filled = lines.filter((line) => line.text.trim() !== '')
  const line = filled[row + 2] ?? filled.at(-1) ?? lines[0] ?? { text: '', start: 0 }
  const columns = filled[0] ? blankCells(filled[0].text, Number.POSITIVE_INFINITY).length / 2 : 0
  const spans = blankCells(line.text, row < 0 || column >= columns ? Number.POSITIVE_INFINITY : columns)
  const start = spans[column * 2]
  const end = spans[column * 2 + 1]
  if (column >= 0 && start !== undefined && end !== undefined) {
    return { start: line.start + start, end: line.start + Math.max(end, start + 1) }
  }
  const lead = line.text.length - line.text.trimStart().length
  return { start: line.start + lead, end: line.start + Math.max(line.text.trimEnd().length, lead + 1) }
}
