/** Cells from a spreadsheet, and where in the readings they go. */
import { blankCells, cellTexts } from '../format/cells.ts'
import { seenDecimalComma, typedNumber } from './numbers.ts'
import { agreeOn, headUnit, isUnits } from './pasted-units.ts'
import { type ColumnEntry, isBlankRow, isEmptyColumn, type RunState } from './state.ts'

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
  /** Why they cannot be taken as they are, in sentences. */
  readonly refused: readonly string[]
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
  const units = head && isUnits(all[1]) ? all[1] : undefined
  const skipped = head ? (units ? 2 : 1) : 0
  const body = all.slice(skipped)
  const notes: string[] = []
  const ask: { column: string; cell: string }[] = []
  const before = state.rows.filter((row) => !isBlankRow(row))
  const agreed = state.columns.map((column, at) => {
    const source = head ? head.indexOf(at) : -1
    const found = source < 0 ? { unit: '', meant: false } : headUnit(all[0]?.[source], units?.[source])
    return agreeOn(column, found, isEmptyColumn(state, at))
  })
  notes.push(...agreed.flatMap(({ note }) => note || []))
  const cellsOf = agreed.map(({ column }, at) => {
    const source = places.indexOf(at)
    const cells = body.map((row) => (source < 0 ? '' : (row[source] ?? '')))
    if (source < 0 || !isNumbers(column)) return cells
    const comma = decimalComma[column.name] ?? seenDecimalComma(cells)
    const read = cells.map((cell) => typedNumber(cell, comma))
    const open = read.findIndex((each) => each.is === 'ambiguous')
    if (open >= 0) ask.push({ column: column.name, cell: cells[open] ?? '' })
    const changed = read.findIndex((each) => each.is === 'number' && each.changed)
    const example = read[changed]
    if (example?.is === 'number') notes.push(`${column.name}: ${cells[changed]} read as ${example.text}`)
    return read.map((each, row) => (each.is === 'number' ? each.text : (cells[row] ?? '')))
  })
  const widest = Math.max(0, ...body.map((row) => row.length))
  const left = Math.max(widest, places.length) - new Set(places.filter((place) => place !== null)).size
  if (left > 0)
    notes.push(`${left} pasted ${left === 1 ? 'column has' : 'columns have'} no place here and were left out`)
  if (head) notes.push('the first row named the columns')
  const rows = body.map((_, row) => cellsOf.map((cells) => cells[row] ?? ''))
  const columns = agreed.map(({ column }) => column)
  const refused = agreed.flatMap((each) => each.refused || [])
  return { state: { ...state, columns, rows: [...before, ...rows] }, rows: rows.length, notes, ask, refused }
}
