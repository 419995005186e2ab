/** Cells from a spreadsheet, and where in the readings they go. */
import { blankCells, cellTexts } from '../format/cells.ts'
import { seenDecimalComma, typedNumber } from './numbers.ts'
import { type ColumnEntry, isBlankRow, type RunState } from './state.ts'

/**
 * Rows of cells as a clipboard holds them: tabs between cells, else semicolons, else blanks; of blanks the last of
 * `most` cells takes the rest of its line.
 */
export const cellsOfText = (text: string, most: number): string[][] => {
  const lines = text
    .replace(/\r\n?/g, '\n')
    .split('\n')
    .filter((line) => line.trim() !== '')
  const mark = text.includes('\t') ? '\t' : text.includes(';') ? ';' : null
  if (mark !== null) return lines.map((line) => line.split(mark).map((cell) => cell.trim()))
  return lines.map((line) => cellTexts(line, blankCells(line, most)))
}

export type Pasted = {
  readonly state: RunState
  readonly rows: number
  /** What was understood or left out, in sentences. */
  readonly notes: readonly string[]
  /** Columns in which nothing tells whether a comma is the decimal sign, with one such cell each. */
  readonly ask: readonly { readonly column: string; readonly cell: string }[]
}

const plainName = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[([].*$|,.*$/, '')
    .trim()
    .replace(/[\s-]+/g, '_')

/** Names in the first pasted row, each the place of a column of ours; null where it is no head. */
const headOf = (first: readonly string[], columns: readonly ColumnEntry[]): (number | null)[] | null => {
  const places = first.map((cell) => {
    const at = columns.findIndex((column) => column.name === plainName(cell))
    return at < 0 ? null : at
  })
  return places.some((place) => place !== null) ? places : null
}

/** A second row of the head with the units. */
const isUnits = (row: readonly string[] | undefined, columns: readonly ColumnEntry[]): boolean =>
  row?.some((cell) =>
    columns.some((column) => column.unit === cell.replace(/^[[(]|[\])]$/g, '') && cell !== '1'),
  ) === true

const isNumbers = ({ unit }: ColumnEntry): boolean => unit !== 'text' && !unit.startsWith('hh:mm')

/**
 * Puts pasted rows below those that are there. With a head of known names the columns go by name, else in order from
 * the column `from`. `decimalComma` answers what `ask` asked; a number that is still ambiguous stays as it was typed.
 */
export const pasteRows = (
  state: RunState,
  text: string,
  from = 0,
  decimalComma: Readonly<Record<string, boolean>> = {},
): Pasted => {
  const all = cellsOfText(text, state.columns.at(-1)?.unit === 'text' ? state.columns.length - from : 1e9)
  const head = headOf(all[0] ?? [], state.columns)
  const places =
    head ?? (all[0] ?? []).map((_, index) => (from + index < state.columns.length ? from + index : null))
  const skipped = head ? (isUnits(all[1], state.columns) ? 2 : 1) : 0
  const body = all.slice(skipped)
  const notes: string[] = []
  const ask: { column: string; cell: string }[] = []
  const columns = state.columns.map((column, at) => {
    const source = places.indexOf(at)
    const cells = body.map((row) => (source < 0 ? '' : (row[source] ?? '')))
    if (source < 0 || !isNumbers(column)) return cells
    const comma = decimalComma[column.name] ?? seenDecimalComma(cells)
    const read = cells.map((cell) => typedNumber(cell, comma))
    const open = read.findIndex((each) => each.is === 'ambiguous')
    if (open >= 0) ask.push({ column: column.name, cell: cells[open] ?? '' })
    if (read.some((each) => each.is === 'number' && each.changed))
      notes.push(`${column.name}: commas read as decimal signs`)
    return read.map((each, row) => (each.is === 'number' ? each.text : (cells[row] ?? '')))
  })
  const widest = Math.max(0, ...body.map((row) => row.length))
  const left = places.filter((place) => place === null).length + Math.max(0, widest - places.length)
  if (left > 0)
    notes.push(`${left} pasted ${left === 1 ? 'column has' : 'columns have'} no place here and were left out`)
  if (head) notes.push('the first row named the columns')
  const rows = body.map((_, row) => columns.map((cells) => cells[row] ?? ''))
  const before = state.rows.filter((row) => !isBlankRow(row))
  return { state: { ...state, rows: [...before, ...rows] }, rows: rows.length, notes, ask }
}
