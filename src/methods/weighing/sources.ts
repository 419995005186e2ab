/** Digits: each point on each scale was rounded anew, and so were each tare, each arm and each item. */
import type { Columns, ExtraSource, Givens, Selection } from '../method.ts'
import { digitSources, groupsOf, rowsOf } from '../repeats.ts'
import { scalesOf, words } from './names.ts'
import type { Choice } from './select.ts'

export const sources = (columns: Columns, _: Givens, selection: Selection): readonly ExtraSource[] => {
  const { cells, items, spread } = selection as Choice
  const nameOf = (row: number) => columns.point?.texts?.[row]
  const none = { sd: Number.NaN, dof: 0 }
  const ofScales = scalesOf(columns).flatMap((column) => [
    ...digitSources(
      column,
      words(column),
      columns,
      cells.filter((cell) => cell.column === column).map(({ point, rows }) => ({ name: point, rows })),
      spread,
    ),
    ...digitSources(
      column,
      words(column),
      columns,
      items
        .filter((item) => item.column === column)
        .map(({ item, row }) => ({ name: `${item}_${row + 1}`, rows: [row] })),
      none,
    ),
  ])
  const ofOthers = ['tare', 'arm'].flatMap((column) =>
    digitSources(column, column, columns, groupsOf(rowsOf(columns[column]), nameOf), none),
  )
  return [...ofScales, ...ofOthers]
}
