/** The first records of a file, and where names, units and readings begin in them. */
import { isUnitsRow, isValueLike } from './cell-kinds.ts'
import { cellsOf, cursorAt, isBlankRecord, nextRecord } from './record.ts'
import type { Delimiter, LoggerPlace } from './types.ts'

/** So much of a file tells how it is written. */
const HEAD = 16_384

export type HeadRecord = {
  readonly start: number
  /** Offset behind it. */
  readonly end: number
  readonly cells: readonly string[]
  readonly spans: readonly number[]
}

/** Where a line begins, counted from 1; the end of the text where there are fewer. */
export function lineStart(text: string, line: number): number {
  let at = 0
  for (let count = 1; count < line; count++) {
    const end = text.indexOf('\n', at)
    if (end < 0) return text.length
    at = end + 1
  }
  return at
}

/** The records from an offset on that are not blank, as far as they are looked at. */
export function headRecords(text: string, from: number, delimiter: Delimiter): HeadRecord[] {
  const most = from + HEAD
  // A last line that is cut off in the middle would look unlike the others.
  const end = text.length <= most ? text.length : Math.max(from, text.lastIndexOf('\n', most) + 1)
  const head = text.slice(0, end)
  const cursor = cursorAt(from)
  const records: HeadRecord[] = []
  while (cursor.at < head.length) {
    nextRecord(head, cursor, delimiter)
    if (isBlankRecord(cursor)) continue
    const spans = cursor.spans.slice(0, 2 * cursor.count)
    records.push({ start: cursor.start, end: cursor.at, cells: cellsOf(head, cursor), spans })
  }
  return records
}

/** The number of cells that most records have. */
export function commonWidth(records: readonly HeadRecord[]): number {
  const counts = new Map<number, number>()
  for (const { cells } of records) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1)
  // Of two numbers equally common, that of the readings, which come last.
  const last = records.at(-1)?.cells.length ?? 0
  return [...counts].reduce(
    (best, [width, count]) => {
      const more = count > best.count || (count === best.count && width === last)
      return more ? { width, count } : best
    },
    { width: 0, count: 0 },
  ).width
}

export type Layout = {
  readonly names: HeadRecord | null
  readonly units: HeadRecord | null
  /** Offset of the first record of readings. */
  readonly from: number
}

const NOTHING: Layout = { names: null, units: null, from: 0 }

/** Names in a given record; the next is the line of units where it looks like one. */
export function layoutFrom(records: readonly HeadRecord[], names: number): Layout {
  const named = records[names]
  if (!named) return NOTHING
  const below = records[names + 1]
  const units = below && isUnitsRow(below.cells) ? below : null
  return { names: named, units, from: (units ?? named).end }
}

/**
 * Found from below: the readings begin with the first record that has values in most of the columns that hold
 * values; above them may stand units, and above these the names.
 */
export function layoutFound(records: readonly HeadRecord[]): Layout {
  const width = commonWidth(records)
  const alike = records.filter(({ cells }) => cells.length === width)
  const columns = Array.from({ length: width }, (_, column) => column).filter(
    (column) => 2 * alike.filter(({ cells }) => isValueLike(cells[column] ?? '')).length > alike.length,
  )
  const isReading = ({ cells }: HeadRecord) =>
    cells.length === width &&
    !isUnitsRow(cells) &&
    2 * columns.filter((column) => isValueLike(cells[column] ?? '')).length > columns.length
  const first = records.findIndex(isReading)
  if (first < 0) return layoutFrom(records, 0)
  const above = records[first - 1]
  const fits = (record: HeadRecord | undefined) => record !== undefined && record.cells.length >= width
  const units = above && fits(above) && isUnitsRow(above.cells) ? above : null
  const named = records[first - (units ? 2 : 1)]
  const from = records[first]?.start ?? 0
  return { names: named && fits(named) ? named : null, units, from }
}

/** A cell of a record in the head; the whole record where there is no such cell. */
export function spanAt(record: HeadRecord | null, column: number): LoggerPlace {
  const { spans = [], start = 0 } = record ?? {}
  const [from = spans[0] ?? start, to = spans.at(-1) ?? start + 1] =
    column >= 0 ? spans.slice(2 * column, 2 * column + 2) : []
  return { in: 'data', start: from, end: Math.max(to, from + 1) }
}
