/** How a file is written and what stands where: as the run says, else found by looking. */
import type { Result } from '../../quantity/types.ts'
import { type CellFault, headFault } from '../table.ts'
import { isUnitsRow } from './cell-kinds.ts'
import { type Found, findDecimal, findDelimiter, numberCells } from './dialect.ts'
import {
  commonWidth,
  type HeadRecord,
  headRecords,
  type Layout,
  layoutFound,
  layoutFrom,
  lineStart,
  spanAt,
} from './head.ts'
import { type Planned, planColumns } from './plan.ts'
import { lineOf } from './scan-faults.ts'
import { notText } from './text.ts'
import type {
  Decimal,
  Delimiter,
  Dialect,
  LoggerColumn,
  LoggerFault,
  LoggerOptions,
  LoggerText,
} from './types.ts'

const refused = (error: LoggerFault): { readonly ok: false; readonly error: readonly LoggerFault[] } => ({
  ok: false,
  error: [error],
})

/** Names, units and how the file is written, before the readings are. */
export type Opened = {
  readonly dialect: Dialect
  /** Why it is so, for those who want to know. */
  readonly why: { readonly delimiter: string; readonly decimal: string }
  readonly layout: Layout
  /** Names of the file's columns, as many as there are columns; empty where it has none. */
  readonly names: readonly string[]
  readonly records: readonly HeadRecord[]
  readonly planned: Planned
}

/** Finds out how a file is written and what stands where, as far as the options do not say. */
export function openLogger(options: LoggerOptions, read: LoggerText): Result<Opened, readonly LoggerFault[]> {
  const { text } = read
  const unreadable = notText(read)
  if (unreadable) return refused(unreadable)
  const { columns, skip } = options
  const from = lineStart(text, (skip ?? 0) + 1)
  const wanted = Object.values(columns ?? {}).map((column) => column.from)
  const delimiter: Found<Delimiter> = options.delimiter
    ? { value: options.delimiter, why: 'the run says so' }
    : findDelimiter(
        text,
        from,
        wanted.filter((name) => !isNumber(name)),
      )
  if ('fault' in delimiter) return refused(delimiter.fault)
  const records = headRecords(text, from, delimiter.value)
  const misled = skip === undefined ? null : skipFault(text, records, wanted, skip, delimiter.value)
  if (misled) return refused(misled)
  const layout = columns ? layoutAsked(records, wanted, skip !== undefined) : layoutOwn(records)
  const names = columnNames(layout, records)
  const planned = columns ? planColumns(columns, layout, names.length) : planOwn(layout, names, records)
  const numbers = planned.columns.filter((plan) => plan.kind === 'number').map((plan) => plan.at)
  const decimal: Found<Decimal> = options.decimal
    ? { value: options.decimal, why: 'the run says so' }
    : findDecimal(numberCells(records, layout.from, numbers))
  if (planned.faults.length === 0 && 'fault' in decimal) return refused(decimal.fault)
  const sign = 'fault' in decimal ? { value: '.' as const, why: '' } : decimal
  const dialect = { delimiter: delimiter.value, decimal: sign.value }
  const why = { delimiter: delimiter.why, decimal: sign.why }
  return { ok: true, value: { dialect, why, layout, names, records, planned } }
}

const isNumber = (name: string) => /^[1-9]\d{0,4}$/.test(name)

/** The names stand where the run's names are found together; with `skip`, behind it. */
function layoutAsked(records: readonly HeadRecord[], wanted: readonly string[], skips: boolean): Layout {
  const [first] = records
  const words = wanted.filter((name) => !isNumber(name))
  const holds = ({ cells }: HeadRecord, names: readonly string[]) =>
    names.every((name) => cells.includes(name))
  if (words.length === 0 && skips && !(first && holds(first, wanted)))
    return { names: null, units: null, from: first?.start ?? 0 }
  if (skips) return layoutFrom(records, 0)
  const all = words.length === 0 ? -1 : records.findIndex((record) => holds(record, words))
  return all >= 0 ? layoutFrom(records, all) : layoutFound(records)
}

/** None of the names stands where the run says that they stand. */
function skipFault(
  text: string,
  records: readonly HeadRecord[],
  wanted: readonly string[],
  skip: number,
  delimiter: Delimiter,
): LoggerFault | null {
  const words = wanted.filter((name) => !isNumber(name))
  const [first] = records
  if (words.length === 0 || (first && words.some((name) => first.cells.includes(name)))) return null
  const holding = headRecords(text, 0, delimiter).find(({ cells }) =>
    words.every((name) => cells.includes(name)),
  )
  const line = holding ? lineOf(text, holding.start) : 0
  return {
    code: 'readings/file-column',
    message: `behind ${skip} lines no line of names is found: \`${words[0]}\` is not there`,
    at: { in: 'run', path: ['skip'], part: 'value' },
    hint:
      line > 0
        ? `the names stand on line ${line}: write \`skip: ${line - 1}\``
        : 'leave it out, and the names are looked for',
  }
}

/** A file in the words of the method: names, and units in the line below them. */
function layoutOwn(records: readonly HeadRecord[]): Layout {
  const found = records.findIndex(({ cells }, index) => {
    const below = records[index + 1]?.cells
    return below !== undefined && below.length === cells.length && isUnitsRow(below)
  })
  const names = records[Math.max(0, found)] ?? null
  const units = records[Math.max(0, found) + 1] ?? null
  return { names, units, from: (units ?? names)?.end ?? 0 }
}

/** Empty names at the end come of delimiters at the end of lines. */
function columnNames({ names }: Layout, records: readonly HeadRecord[]): string[] {
  if (!names) return Array.from({ length: commonWidth(records) }, () => '')
  const last = names.cells.findLastIndex((name) => name !== '')
  return names.cells.slice(0, last + 1)
}

function planOwn(layout: Layout, names: readonly string[], records: readonly HeadRecord[]): Planned {
  const units = layout.units?.cells.slice(0, Math.max(names.length, lastFilled(layout.units.cells))) ?? []
  const rows = records.filter(({ start }) => start >= layout.from).length
  const fault = headFault(names, units, rows)
  if (fault) return { columns: [], faults: [headPlace(fault, layout)], warnings: [] }
  const asked = names.map((name, at): [string, LoggerColumn] => [name, { from: name, unit: units[at] ?? '' }])
  const { columns, faults } = planColumns(Object.fromEntries(asked), layout, names.length)
  const placed = faults.map((fault): LoggerFault => {
    const name = fault.at.in === 'run' ? String(fault.at.path[1]) : ''
    return { ...fault, at: spanAt(layout.units, names.indexOf(name)) }
  })
  return { columns, faults: placed, warnings: [] }
}

const lastFilled = (cells: readonly string[]) => cells.findLastIndex((cell) => cell !== '') + 1

function headPlace({ row, column, ...fault }: CellFault, layout: Layout): LoggerFault {
  const { code, message, why } = fault
  const hint =
    code === 'readings/no-table'
      ? 'a data file has a line of names, a line of units, and one row a line'
      : fault.hint
  return { code, message, why, hint, at: spanAt(row === -2 ? layout.names : layout.units, column) }
}
