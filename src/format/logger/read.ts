/** A logger file → readings in SI. The same code in Node, in the form and in `look`: text in, typed arrays out. */
import type { Result } from '../../quantity/types.ts'
import type { ReadingColumn, Readings } from '../types.ts'
import { type Layout, spanAt } from './head.ts'
import { scanKept } from './kept.ts'
import { notesOf } from './notes.ts'
import { type Opened, openLogger } from './open.ts'
import type { ColumnPlan, Planned } from './plan.ts'
import { type ColumnInSI, columnInSI, firstFall, isRising } from './raw.ts'
import { cellText, cursorAt, nextRecord } from './record.ts'
import { type Scan, type Scanned, scan } from './scan.ts'
import { backFault, lineOf } from './scan-faults.ts'
import type { LoggerFault, LoggerOptions, LoggerPlace, LoggerReadings, LoggerText } from './types.ts'
import { isTimed, linesUsed, windowOf } from './window.ts'

const NONE = new Float64Array(0)

type Failure = { readonly ok: false; readonly error: readonly LoggerFault[] }

const refused = (...error: readonly LoggerFault[]): Failure => ({ ok: false, error })

/**
 * Reads a logger file as the run says it is written. Rows keep their order; missing readings are NaN. Faults point
 * into the file, or to the field below `readings` that asks for what cannot be.
 */
export function readLogger(
  options: LoggerOptions,
  source: LoggerText | string,
  file?: string,
): Result<LoggerReadings, readonly LoggerFault[]> {
  const read: LoggerText = typeof source === 'string' ? { text: source.replace(/^\uFEFF/, '') } : source
  const opened = openLogger(options, read)
  if (!opened.ok) return opened
  const { dialect, layout, names, planned } = opened.value
  const { text } = read
  const { columns } = planned
  if (planned.faults.length > 0) return refused(...planned.faults)
  const { use } = options
  const timed = columns.findIndex((plan) => plan.name === 'time')
  const needsTime = isTimed(use?.from) || isTimed(use?.to)
  const unusable = needsTime ? timeFault(use ?? {}, columns[timed]) : null
  if (unusable) return refused(unusable)
  const input: Scan = {
    text,
    ...linesUsed(text, layout.from, use),
    dialect,
    columns,
    names,
    missing: options.missing ?? [],
    timed,
    ...(needsTime && use ? { window: windowOf(use) } : {}),
  }
  const scanned = read.kept ? scanKept(input, read.kept) : scan(input)
  const inSI = scanned.columns.map((raw, column) => columnInSI(raw, columns[column] as ColumnPlan))
  const faults = [...scanned.faults, ...backFaults(input, scanned, inSI)]
  if (faults.length > 0) return refused(...faults)
  if (scanned.rows === 0 && use) return refused(emptyUse())
  return { ok: true, value: readingsOf(options, read, opened.value, scanned, inSI, file) }
}

/** Times that go back, in the order of the file. Where the names stand once more a new log begins, and it is no wonder. */
function backFaults(input: Scan, { starts, faults }: Scanned, inSI: readonly ColumnInSI[]): LoggerFault[] {
  if (faults.some(({ code }) => code === 'readings/names-again')) return []
  return input.columns
    .map((plan, column) => ({ column, row: isRising(plan) ? firstFall(inSI[column]?.values ?? NONE) : -1 }))
    .filter(({ row }) => row >= 0)
    .sort((a, b) => a.row - b.row)
    .map(({ column, row }) => backFault(input, column, starts[row] ?? 0))
}

function timeFault(use: NonNullable<LoggerOptions['use']>, plan: ColumnPlan | undefined): LoggerFault | null {
  const part = isTimed(use.from) ? 'from' : 'to'
  const at: LoggerPlace = { in: 'run', path: ['use', part], part: 'value' }
  const code = 'readings/use'
  if (!plan || plan.kind === 'words') {
    const message = 'there is no column `time` by which the log could be cut'
    return { code, message, at, hint: 'name the column of times, or cut by lines: `use: {from: line 12}`' }
  }
  if (plan.kind === 'time') return null
  const clock = (['from', 'to'] as const).find((each) => use[each]?.form === 'clock')
  if (!clock) return null
  const message = 'the column `time` counts from a beginning and knows no time of day'
  const hint = 'say how long after the first sample, as in `120 s`'
  return { code, message, at: { in: 'run', path: ['use', clock], part: 'value' }, hint }
}

const emptyUse = (): LoggerFault => ({
  code: 'readings/use',
  message: 'no row of the file lies within',
  at: { in: 'run', path: ['use'], part: 'value' },
  hint: 'elapsed times count from the first sample of the file; `npm run look` says from when to when it goes',
})

function readingsOf(
  options: LoggerOptions,
  read: LoggerText,
  { layout, dialect, planned }: Opened,
  scanned: Scanned,
  inSI: readonly ColumnInSI[],
  file: string | undefined,
): LoggerReadings {
  const { text } = read
  const { rows, starts } = scanned
  const { delimiter } = dialect
  const columns = planned.columns.map((plan, column): ReadingColumn => {
    const { values, digit } = inSI[column] ?? { values: new Float64Array(rows), digit: 0 }
    const cell = (row: number): string => {
      const cursor = cursorAt(starts[row] ?? text.length)
      nextRecord(text, cursor, delimiter)
      const [start, end] = cursor.spans.slice(2 * plan.at, 2 * plan.at + 2)
      return start === undefined || end === undefined || plan.at >= cursor.count
        ? ''
        : cellText(text, start, end)
    }
    let known: readonly string[] | undefined
    return {
      name: plan.name,
      unit: plan.unit,
      values: plan.kind === 'time' ? fromFirstDay(values) : values,
      missing: scanned.columns[column]?.missing ?? new Uint8Array(rows),
      // A million texts a column are made only where somebody wants them all.
      get cells() {
        known ??= Array.from({ length: rows }, (_, row) => cell(row))
        return known
      },
      cell,
      text: plan.kind === 'words',
      digit,
      dim: plan.dim,
    }
  })
  const times = columns.find((column) => column.name === 'time' && !column.text)?.values
  const notes = notesOf(read, text, starts, times)
  const readings: Readings = { rows, columns, file, ...(notes.length > 0 ? { notes } : {}) }
  const placeOf = (row: number, column: number): LoggerPlace =>
    row < 0
      ? headPlaceOf(options, layout, planned, row, column)
      : rowPlace(row, planned.columns[column]?.at ?? -1)
  const rowPlace = (row: number, at: number): LoggerPlace => {
    const cursor = cursorAt(starts[row] ?? 0)
    nextRecord(text, cursor, delimiter)
    const record = {
      start: cursor.start,
      end: cursor.at,
      cells: [],
      spans: cursor.spans.slice(0, 2 * cursor.count),
    }
    return spanAt(record, at)
  }
  return { readings, warnings: planned.warnings, placeOf, lineOf: (row) => lineOf(text, starts[row] ?? 0) }
}

/** Where a name or a unit is said: in the run, where it says so, else in the file. */
function headPlaceOf(
  { columns }: LoggerOptions,
  layout: Layout,
  planned: Planned,
  row: number,
  column: number,
): LoggerPlace {
  const plan = planned.columns[column]
  if (!columns) return spanAt(row === -2 ? layout.names : layout.units, plan?.at ?? -1)
  if (!plan) return { in: 'run', path: ['columns'], part: 'key' }
  const own = columns[plan.name]
  if (row === -2) return { in: 'run', path: ['columns', plan.name], part: 'key' }
  const said = own?.format !== undefined ? 'format' : own?.unit !== undefined ? 'unit' : null
  return said
    ? { in: 'run', path: ['columns', plan.name, said], part: 'value' }
    : spanAt(layout.units, plan.at)
}

/** Rows that were cut away before midnight leave no day behind. */
function fromFirstDay(values: Float64Array): Float64Array {
  const first = values.find(Number.isFinite) ?? 0
  const days = Math.floor(first / 86_400)
  return days === 0 ? values : values.map((value) => value - 86_400 * days)
}
