/** The place of a cell of a table, found by taking the table apart once more. */
import { blankCells, commaCells } from './cells.ts'

export type TableText = {
  readonly kind: 'blanks' | 'commas'
  /** All lines, blank ones too, with the offset at which each begins. */
  readonly lines: readonly { readonly text: string; readonly start: number }[]
}

/** Row −2 is the names, −1 the units. Column −1, or one that is not there, is the whole row. */
export function cellSpan(table: TableText, row: number, column: number): { start: number; end: number } {
  const filled = table.lines.filter((line) => line.text.trim() !== '')
  const line = filled[row + 2] ?? filled.at(-1) ?? table.lines[0] ?? { text: '', start: 0 }
  const columns = filled[0] ? cellsOf(table, filled[0].text, Number.POSITIVE_INFINITY).length / 2 : 0
  const spans = cellsOf(table, line.text, row < 0 || column >= columns ? Number.POSITIVE_INFINITY : columns)
  const start = spans[column * 2]
  const end = spans[column * 2 + 1]
  if (column >= 0 && start !== undefined && end !== undefined) {
    return { start: line.start + start, end: line.start + Math.max(end, start + 1) }
  }
  const lead = line.text.length - line.text.trimStart().length
  return { start: line.start + lead, end: line.start + Math.max(line.text.trimEnd().length, lead + 1) }
}

const cellsOf = (table: TableText, line: string, limit: number) =>
  table.kind === 'blanks' ? blankCells(line, limit) : commaCells(line)
