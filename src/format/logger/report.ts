/** What `look` prints of a file: how it is written, what each column holds, how it was sampled. */
import { cellAt } from '../cells.ts'
import type { ReadingColumn } from '../types.ts'
import { samplingOf, secondsWords } from './notes.ts'
import type { FoundColumn, Survey } from './survey.ts'
import type { LoggerReadings } from './types.ts'

const HEAD = ['column', 'name', 'holds', 'unit', 'first', 'last', 'lowest', 'highest', 'missing']

/** Rows of cells as lines, the columns under each other. */
const aligned = (rows: readonly (readonly string[])[]): string[] => {
  const widths = HEAD.map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)))
  return rows.map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  )
}

/** Lowest and highest as written. */
function extremes(column: ReadingColumn): [string, string] {
  const { values } = column
  let low = -1
  let high = -1
  let lowest = Number.POSITIVE_INFINITY
  let highest = Number.NEGATIVE_INFINITY
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number
    if (value < lowest) {
      lowest = value
      low = row
    }
    if (value > highest) {
      highest = value
      high = row
    }
  }
  return low < 0 ? ['', ''] : [cellAt(column, low), cellAt(column, high)]
}

function countOf(missing: Uint8Array): number {
  let count = 0
  for (let row = 0; row < missing.length; row++) count += missing[row] as number
  return count
}

function columnRow(found: FoundColumn, column: ReadingColumn | undefined, rows: number): string[] {
  const { number, name, kind, unit } = found
  const head = [String(number), name, kind, unit]
  if (!column || rows === 0) return head
  const [low, high] = column.text ? ['', ''] : extremes(column)
  const missing = countOf(column.missing)
  return [...head, cellAt(column, 0), cellAt(column, rows - 1), low, high, missing > 0 ? String(missing) : '']
}

/** `read` is the file read by `surveyOptions`; null where that is not possible. */
export function surveyLines(found: Survey, read: LoggerReadings | null): string[] {
  const columnOf = ({ number }: FoundColumn) =>
    read?.readings.columns.find((column) => column.name === `column_${number}`)
  const rows = read?.readings.rows ?? 0
  const table = found.columns.map((column) => columnRow(column, columnOf(column), rows))
  const doubts = found.columns.flatMap(({ name, number, kind, formats }) => {
    if (kind !== 'time') return []
    const which = name || `column ${number}`
    if (formats.length === 0) return [`the times of ${which} are written in no format that is known`]
    if (formats.length === 1) return [`times of ${which}: ${formats[0]}`]
    return [`times of ${which} can be read as ${formats.join(' or as ')}: say which`]
  })
  return [
    `${found.encoding ?? 'text'}${read ? `, ${rows} rows` : ''}`,
    ...found.reasons,
    ...doubts,
    ...(read ? samplingLines(found, read) : []),
    '',
    ...aligned([HEAD, ...table]),
  ]
}

/** By the first column of times; else by the first whose unit is one of time. */
function samplingLines(found: Survey, { readings, lineOf }: LoggerReadings): string[] {
  const isTime = ({ dim, text }: ReadingColumn) =>
    !text && dim.every((exponent, base) => exponent === (base === 2 ? 1 : 0))
  const time = readings.columns.find(isTime)
  if (!time) return []
  const { interval, doubled, gaps, longest } = samplingOf(time.values)
  const days = Math.floor((time.values.findLast(Number.isFinite) ?? 0) / 86_400)
  const clock = found.columns.some(({ kind, number }) => kind === 'time' && time.name === `column_${number}`)
  return [
    interval === null ? 'sampled unevenly' : `sampled every ${secondsWords(interval)}`,
    ...(gaps > 0 && longest
      ? [
          `${gaps} ${gaps === 1 ? 'gap' : 'gaps'}; the longest, ${secondsWords(longest.seconds)}, ends on line ${lineOf(longest.row)}`,
        ]
      : []),
    ...(doubled > 0
      ? [`${doubled} ${doubled === 1 ? 'row has' : 'rows have'} the time of the row above`]
      : []),
    ...(clock && days > 0 ? [`the clock passes midnight ${days === 1 ? 'once' : `${days} times`}`] : []),
  ]
}
