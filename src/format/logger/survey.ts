/** What a data file looks like, column by column, before anybody has said anything of it: for `look` and the form. */
import { columnUnit } from '../column-units.ts'
import { bareUnit, isMark, isNumberLike, isTimeLike } from './cell-kinds.ts'
import { DELIMITER_NAMES, findDecimal, findDelimiter, numberCells } from './dialect.ts'
import { commonWidth, type HeadRecord, headRecords, type Layout, layoutFound } from './head.ts'
import { unitInName } from './plan.ts'
import { lineOf } from './scan-faults.ts'
import { notText } from './text.ts'
import { readTime, type TimeSeen, timeFormat } from './time-format.ts'
import type {
  Decimal,
  Delimiter,
  Encoding,
  LoggerColumn,
  LoggerFault,
  LoggerOptions,
  LoggerText,
} from './types.ts'

export type FoundColumn = {
  /** From 1. */
  readonly number: number
  /** As it stands in the file; empty where it has none. */
  readonly name: string
  /** What can stand under `from`: the name, or the number where the name is missing or double. */
  readonly from: string
  /** From the line of units or the name; empty where nothing is said. */
  readonly unit: string
  readonly kind: 'time' | 'number' | 'words' | 'empty'
  /** Formats in which all times of the head can be read; more than one is a question. */
  readonly formats: readonly string[]
  /** Cells that stand for no value, as written. */
  readonly marks: readonly string[]
}

export type Survey = {
  readonly encoding: Encoding | null
  readonly delimiter: Delimiter
  readonly decimal: Decimal | null
  /** Lines above the names, or above the first reading where there are no names. */
  readonly skip: number
  readonly hasNames: boolean
  readonly hasUnits: boolean
  readonly columns: readonly FoundColumn[]
  /** How it was found, one sentence each. */
  readonly reasons: readonly string[]
  /** What can be read in two ways, or not at all. */
  readonly questions: readonly LoggerFault[]
}

/** Formats that loggers and spreadsheets write; common practice, no source. */
const FORMATS: readonly string[] = [
  'HH:mm:ss',
  'HH:mm',
  'h:mm:ss A',
  'h:mm A',
  'ISO',
  ...[
    'YYYY-MM-DD',
    'YYYY/MM/DD',
    'DD.MM.YYYY',
    'DD.MM.YY',
    'DD/MM/YYYY',
    'MM/DD/YYYY',
    'DD-MM-YYYY',
    'DD-MMM-YYYY',
    'DD MMM YYYY',
  ].flatMap((date) => ['HH:mm:ss', 'HH:mm', 'h:mm:ss A', 'h:mm A'].map((time) => `${date} ${time}`)),
]

/** Looks at the beginning of a file; null where it is no text of readings at all, with the reason among the questions. */
export function survey(source: LoggerText | string): Survey {
  const read: LoggerText = typeof source === 'string' ? { text: source.replace(/^\uFEFF/, '') } : source
  const { text, encoding = null } = read
  const nothing = { encoding, skip: 0, hasNames: false, hasUnits: false, columns: [], reasons: [] }
  const unreadable = notText(read)
  if (unreadable) return { ...nothing, delimiter: ',', decimal: null, questions: [unreadable] }
  const delimiter = findDelimiter(text, 0, [])
  if ('fault' in delimiter) return { ...nothing, delimiter: ',', decimal: null, questions: [delimiter.fault] }
  const records = headRecords(text, 0, delimiter.value)
  const layout = layoutFound(records)
  const rows = records.filter(({ start }) => start >= layout.from)
  const columns = columnsOf(layout, rows, commonWidth(records))
  const numbers = columns.filter(({ kind }) => kind === 'number').map(({ number }) => number - 1)
  const decimal = findDecimal(numberCells(records, layout.from, numbers))
  const skip = lineOf(text, layout.names?.start ?? layout.from) - 1
  const sign = 'fault' in decimal ? null : decimal.value
  return {
    encoding,
    delimiter: delimiter.value,
    decimal: sign,
    skip,
    hasNames: layout.names !== null,
    hasUnits: layout.units !== null,
    columns,
    reasons: [
      `delimiter ${DELIMITER_NAMES[delimiter.value]}: ${delimiter.why}`,
      'fault' in decimal ? 'the decimal sign is in doubt' : `decimal sign ${sign}: ${decimal.why}`,
      layout.names ? `names on line ${skip + 1}` : 'no line of names was found',
      layout.units ? `units on line ${lineOf(text, layout.units.start)}` : 'no line of units was found',
    ],
    questions: 'fault' in decimal ? [decimal.fault] : [],
  }
}

function columnsOf(layout: Layout, rows: readonly HeadRecord[], width: number): FoundColumn[] {
  const names = layout.names?.cells ?? []
  return Array.from({ length: Math.max(width, names.length) }, (_, at): FoundColumn => {
    const name = names[at] ?? ''
    const cells = rows.map((row) => row.cells[at] ?? '')
    const filled = cells.filter((cell) => !isMark(cell))
    const share = (is: (cell: string) => boolean) => filled.filter(is).length / Math.max(1, filled.length)
    const said = bareUnit(layout.units?.cells[at] ?? '')
    const single = name !== '' && names.indexOf(name) === names.lastIndexOf(name)
    // One bad cell must not make words of a column of numbers.
    const kind =
      filled.length === 0
        ? 'empty'
        : share(isNumberLike) > 0.5
          ? 'number'
          : share(isTimeLike) > 0.5
            ? 'time'
            : 'words'
    const marks = kind === 'words' ? [] : [...new Set(cells.filter((cell) => isMark(cell)))]
    const unit = columnUnit(said).ok && said !== '' ? said : unitInName(name)
    const formats = kind === 'time' ? FORMATS.filter((format) => reads(format, filled)) : []
    return { number: at + 1, name, from: single ? name : String(at + 1), unit, kind, formats, marks }
  }).filter(({ name, kind }) => name !== '' || kind !== 'empty')
}

/** True where a format reads nearly all cells: one that is broken is found when all are read. */
function reads(written: string, cells: readonly string[]): boolean {
  const format = timeFormat(written)
  if (!format.ok) return false
  const seen: TimeSeen = { day: 0, seconds: 0, zone: 0, places: 0 }
  const good = cells.filter((cell) => readTime(cell, 0, cell.length, format.value, seen)).length
  return good > 0.9 * cells.length
}

/** Options that read every column of the file, under names of their own: for figures about them. */
export function surveyOptions({ columns, delimiter, decimal, skip, hasNames }: Survey): LoggerOptions {
  const chosen = columns.flatMap(({ number, from, unit, kind, formats }): [string, LoggerColumn][] => {
    if (kind === 'empty' || (kind === 'time' && formats.length === 0)) return []
    const name = `column_${number}`
    const [format] = formats
    const place = hasNames ? from : String(number)
    if (kind === 'time') return [[name, { from: place, format }]]
    return [[name, { from: place, unit: kind === 'words' ? 'text' : unit || '1' }]]
  })
  return {
    columns: Object.fromEntries(chosen),
    delimiter,
    skip,
    missing: [...new Set(columns.flatMap(({ marks }) => marks))],
    ...(decimal ? { decimal } : {}),
  }
}
