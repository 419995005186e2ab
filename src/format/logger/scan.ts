/** One pass over the records of a file, into typed arrays. */
import { OVERLOAD } from './bad-cell.ts'
import { clockOf } from './clock.ts'
import { type NumberSeen, readNumber } from './number.ts'
import type { ColumnPlan } from './plan.ts'
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
  readonly values: readonly Float64Array[]
  readonly missing: readonly Uint8Array[]
  /** Size of the last digit by column, SI. */
  readonly digits: readonly number[]
  readonly faults: readonly LoggerFault[]
}

/** Reads a cell to SI into a row, NaN where that cannot be; remembers the finest digit. */
type Reader = {
  readonly read: (into: Float64Array, row: number, start: number, end: number) => void
  readonly digit: () => number
}

type Store = { starts: Int32Array; values: Float64Array[]; missing: Uint8Array[] }

const MISSING = ['-', 'n/a']

export function scan(input: Scan): Scanned {
  const { text, to, dialect, columns, window, timed } = input
  const readers = columns.map((plan) => readerOf(input, plan))
  const words = new Set([...MISSING, ...input.missing])
  const faults = faultsOf(input)
  const last = columns.map(() => Number.NEGATIVE_INFINITY)
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
      const value = values[rows] as number
      if (Number.isNaN(value)) {
        const cell = has ? cellText(text, start, end) : ''
        if (words.has(cell)) (store.missing[column] as Uint8Array)[rows] = 1
        else if (plan.kind !== 'words') faults.bad(column, start, end, cell)
      } else if (isRising(plan)) {
        if (value < (last[column] as number)) faults.back(column, start, end)
        last[column] = value
      }
    }
    rows++
  }
  const digits = readers.map((reader) => reader.digit())
  return { rows, ...cutTo(store, rows), digits, faults: faults.all() }
}

/** A time may not go back. */
const isRising = (plan: ColumnPlan): boolean =>
  plan.kind === 'time' || (plan.kind === 'number' && plan.name === 'time')

const ONE = new Float64Array(1)

function timeIn({ count, spans }: Cursor, plan: ColumnPlan | undefined, reader: Reader | undefined): number {
  if (!plan || plan.at >= count) return Number.NaN
  reader?.read(ONE, 0, spans[2 * plan.at] as number, spans[2 * plan.at + 1] as number)
  return ONE[0] as number
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
  const marks = new Set(
    input.missing.map((word) => readNumber(word, 0, word.length, decimal, seen)).filter(Number.isFinite),
  )
  const words = new Set(input.missing)
  const { toSI, scale, offset, digit } = plan
  let power = Number.POSITIVE_INFINITY
  const read: Reader['read'] = (into, row, start, end) => {
    const value = readNumber(text, start, end, decimal, seen)
    const marked = marks.size > 0 && marks.has(value) && words.has(text.slice(start, end))
    if (marked || !(value < OVERLOAD && value > -OVERLOAD)) {
      into[row] = Number.NaN
      return
    }
    if (seen.power < power) power = seen.power
    into[row] = toSI(value * scale) + offset
  }
  return { read, digit: () => (Number.isFinite(power) ? 10 ** power * digit : 0) }
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

const cutTo = ({ starts, values, missing }: Store, rows: number): Store => ({
  starts: starts.slice(0, rows),
  values: values.map((column) => column.slice(0, rows)),
  missing: missing.map((column) => column.slice(0, rows)),
})
