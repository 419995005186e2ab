/** Which rows are repeats of one point, and which point carries least. */
import type { Columns, Selection } from '../method.ts'
import { type Group, groupsOf, meanOf, rowsOf, type Spread, spreadOf } from '../repeats.ts'

export type Choice = Selection & {
  readonly points: readonly Group[]
  /** Of `points`, the one whose scale is pressed least. */
  readonly lightest: number
  readonly spread: Spread
}

export const at = (columns: Columns, name: string, row: number): number =>
  columns[name]?.values[row] ?? Number.NaN

/** A cell that is missing under `tare` is no tare. */
export const netOf = (columns: Columns, row: number): number => {
  const tare = at(columns, 'tare', row)
  return at(columns, 'reading', row) - (Number.isNaN(tare) ? 0 : tare)
}

export const select = (columns: Columns): Choice => {
  const points = groupsOf(rowsOf(columns.reading), (row) => columns.point?.texts?.[row])
  const gross = points.map(({ rows }) => meanOf((row) => at(columns, 'reading', row), rows))
  return {
    points,
    lightest: gross.indexOf(Math.min(...gross)),
    spread: spreadOf((row) => netOf(columns, row), points),
  }
}
