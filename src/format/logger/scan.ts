/** One pass over the records of a file, into typed arrays: what stands there, before names, units and scales. */
import { OVERLOAD } from './bad-cell.ts'
import { clockOf } from './clock.ts'
import { type NumberSeen, readNumber } from './number.ts'
import type { ColumnPlan } from './plan.ts'
import { inSI, type RawColumn } from './raw.ts'
import { type Cursor, cellText, cursorAt, nextRecord } from './record.ts'
import { faultsOf } from './scan-faults.ts'
import type { Dialect, LoggerFault } from './types.ts'
import type { Window } from './window.ts'

export type Scan = {
  readonly text: string
  /** Offsets of the first record and behind the last. */
  readonly from: number
  readonly to: number
  readonly dialect: Dialect
  readonly columns: readonly ColumnPlan[]
  /** Names of the file's columns, as many as a record has cells. */
  readonly names: readonly string[]
  readonly missing: readonly string[]
  /** Decides by the column `timed` which rows are used. */
  readonly window?: Window
  readonly timed: number
}

export type Scanned = {
  readonly rows: number
  /** Offset of each row in the text. */
  readonly starts: Int32Array
  readonly columns: readonly RawColumn[]
  /** A row lacks its last cell, which is one of words. */
  readonly short: boolean
  readonly faults: readonly LoggerFault[]
}

/** Reads a cell into a row, NaN where that cannot be; remembers the finest digit. */
type Reader = {
  readonly read: (into: Float64Array, row: number, start: number, end: number) => void
  readonly digit: () => number
}

type Store = { starts: Int32Array; values: Float64Array[]; missing: Uint8Array[] }

/** Missing is written so, whatever else is listed. */
export const MISSING: readonly string[] = ['-', 'n/a']

export function scan(input: Scan): Scanned {
  const { text, to, dialect, columns, window, timed } = input
  const readers = columns.map((plan) => readerOf(input, plan))
  const words = new Set([...MISSING, ...input.missing])
  const faults = faultsOf(input)
  const cursor = cursorAt(input.from)
  let store = newStore(columns.length, capacityFor(input))
  let rows = 0
  while (cursor.at < to && !faults.stopped()) {
    nextRecord(text, cursor, dialect.delimiter)
    if (isEmpty(cursor)) continue
    if (window) {
      const where = window(timeIn(cursor, columns[timed], readers[timed]))
      if (where > 0) break
      if (where < 0) continue
    }
    if (!faults.fits(cursor)) continue
    if (rows === store.starts.length) store = grown(store)
    store.starts[rows] = cursor.start
    for (let column = 0; column < columns.length; column++) {
      const plan = columns[column] as ColumnPlan
      const start = cursor.spans[2 * plan.at] as number
      const end = cursor.spans[2 * plan.at + 1] as number
      const values = store.values[column] as Float64Array
      const has = plan.at < cursor.count
      if (has) (readers[column] as Reader).read(values, rows, start, end)
      else values[rows] = Number.NaN
      if (!Number.isNaN(values[rows])) continue
      const cell = has ? cellText(text, start, end) : ''
      if (words.has(cell)) (store.missing[column] as Uint8Array)[rows] = 1
      else if (plan.kind !== 'words') faults.bad(column, start, end, cell)
    }
    rows++
  }
  const { starts, values, missing } = cutTo(store, rows)
  const read = columns.map((_, column): RawColumn => {
    const digit = (readers[column] as Reader).digit()
    return { values: values[column] as Float64Array, missing: missing[column] as Uint8Array, digit }
  })
  return { rows, starts, columns: read, short: faults.short(), faults: faults.all() }
}

const ONE = new Float64Array(1)

function timeIn({ count, spans }: Cursor, plan: ColumnPlan | undefined, reader: Reader | undefined): number {
  if (!plan || plan.at >= count) return Number.NaN
  reader?.read(ONE, 0, spans[2 * plan.at] as number, spans[2 * plan.at + 1] as number)
  return inSI(ONE[0] as number, plan)
}

/** Nothing in any cell: a blank line, or one of delimiters alone as spreadsheets leave behind. */
function isEmpty({ count, spans }: Cursor): boolean {
  for (let cell = 0; cell < count; cell++) if (spans[2 * cell] !== spans[2 * cell + 1]) return false
  return true
}

function readerOf(input: Scan, plan: ColumnPlan): Reader {
  const { text } = input
  if (plan.kind === 'words') {
    const read: Reader['read'] = (into, row) => {
      into[row] = Number.NaN
    }
    return { read, digit: () => 0 }
  }
  if (plan.kind === 'time') {
    const clock = clockOf(text, plan.format)
    const digit = () => (plan.format.hasSeconds ? 10 ** -clock.places() : 60)
    const read: Reader['read'] = (into, row, start, end) => {
      into[row] = clock.read(start, end)
    }
    return { read, digit }
  }
  const seen: NumberSeen = { power: 0 }
  const decimal = input.dialect.decimal.charCodeAt(0)
  // A number may be listed as the mark of a missing value: −9999.
  const words = new Set(numberMarks(input.missing, input.dialect))
  const marks = new Set([...words].map((word) => readNumber(word, 0, word.length, decimal, seen)))
  let power = Number.POSITIVE_INFINITY
  const read: Reader['read'] = (into, row, start, end) => {
    const value = readNumber(text, start, end, decimal, seen)
    const marked = marks.size > 0 && marks.has(value) && words.has(text.slice(start, end))
    if (marked || !(value < OVERLOAD && value > -OVERLOAD)) {
      into[row] = Number.NaN
      return
    }
    if (seen.power < power) power = seen.power
    into[row] = value
  }
  return { read, digit: () => (Number.isFinite(power) ? 10 ** power : 0) }
}

/** Those marks of missing values that can be read as numbers. */
export function numberMarks(missing: readonly string[], { decimal }: Dialect): string[] {
  const sign = decimal.charCodeAt(0)
  return missing.filter((word) => Number.isFinite(readNumber(word, 0, word.length, sign, { power: 0 })))
}

/** Rows by the length of the first hundred or so lines, and a little more. */
function capacityFor({ text, from, to }: Scan): number {
  const sample = text.slice(from, Math.min(to, from + 8192))
  const lines = sample.split('\n').length
  return Math.ceil((1.1 * (to - from) * lines) / Math.max(1, sample.length)) + 16
}

const newStore = (columns: number, capacity: number): Store => ({
  starts: new Int32Array(capacity),
  values: Array.from({ length: columns }, () => new Float64Array(capacity)),
  missing: Array.from({ length: columns }, () => new Uint8Array(capacity)),
})

function grown(store: Store): Store {
  const larger = newStore(store.values.length, 2 * store.starts.length)
  larger.starts.set(store.starts)
  for (const [column, values] of store.values.entries()) larger.values[column]?.set(values)
  for (const [column, missing] of store.missing.entries()) larger.missing[column]?.set(missing)
  return larger
}

/** Views, where the store is hardly larger: a copy of a million rows takes its time. */
function cutTo({ starts, values, missing }: Store, rows: number): Store {
  const copied = rows < 0.8 * starts.length
  const cut = <T extends Int32Array | Float64Array | Uint8Array>(all: T): T =>
    (copied ? all.slice(0, rows) : all.subarray(0, rows)) as T
  return { starts: cut(starts), values: values.map(cut), missing: missing.map(cut) }
}
