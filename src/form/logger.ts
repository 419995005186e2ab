/** A logger file in the form: what it holds, which of its columns is which of ours, and what the run says of it. */
import { DELIMITERS, matchColumns } from '../format/logger/front-matter.ts'
import { readLogger } from '../format/logger/read.ts'
import { surveyLines } from '../format/logger/report.ts'
import { type FoundColumn, survey, surveyOptions } from '../format/logger/survey.ts'
import type { LoggerReadings, LoggerText } from '../format/logger/types.ts'
import type { Plain } from '../format/types.ts'
import type { ColumnField } from '../methods/method.ts'
import { isList } from './yaml-text.ts'

/** How one column of ours is read; `from` is empty where the file has none for it. */
export type ChosenColumn = { readonly from: string; readonly unit: string; readonly format: string }

export type FileFound = {
  readonly columns: readonly Pick<FoundColumn, 'from' | 'name' | 'number' | 'kind' | 'unit' | 'formats'>[]
  /** As far as it can be told without a person. */
  readonly chosen: Readonly<Record<string, ChosenColumn>>
  /** Empty where it must be asked. */
  readonly decimal: '' | '.' | ','
  readonly delimiter: string
  readonly skip: number
  readonly missing: readonly string[]
  readonly questions: readonly string[]
}

const howRead = ({ from, kind, unit, formats }: FoundColumn): ChosenColumn => ({
  from,
  unit: kind === 'words' ? 'text' : unit,
  // Of several formats a person chooses: the day may stand before the month.
  format: formats.length === 1 ? (formats[0] ?? '') : '',
})

/** Looks at the beginning of a file before anybody has said anything of it. `fields` are the columns of the card. */
export const lookAt = (text: LoggerText, fields: readonly ColumnField[]): FileFound => {
  const found = survey(text)
  const matched = matchColumns(found.columns, fields)
  const marks = new Set(matched.flatMap(({ column }) => column.marks))
  return {
    columns: found.columns,
    chosen: Object.fromEntries(matched.map(({ name, column }) => [name, howRead(column)])),
    decimal: found.decimal ?? '',
    delimiter: DELIMITERS[found.delimiter].replaceAll('"', ''),
    skip: found.skip,
    missing: [...marks].filter((mark) => mark !== '-' && mark !== 'n/a'),
    questions: found.questions.map(({ message, hint }) => `${message}${hint ? `: ${hint}` : ''}`),
  }
}

/** Reads every column of a file as it was found. Where the text keeps what was read, it is there when it is asked for. */
export const readAll = (text: LoggerText, found = survey(text)): LoggerReadings | null => {
  const read = found.columns.length > 0 ? readLogger(surveyOptions(found), text, '') : null
  return read?.ok ? read.value : null
}

/** What is in a file, line by line, for whoever wants to see it. */
export const fileLines = (text: LoggerText): string[] => {
  const found = survey(text)
  return found.columns.length > 0 ? surveyLines(found, readAll(text, found)) : []
}

type Fields = Readonly<Record<string, Plain>>

const fieldsIn = (value: Plain | undefined): Fields =>
  value === undefined || typeof value === 'string' || isList(value) ? {} : value

const textIn = (value: Plain | undefined): string => (typeof value === 'string' ? value : '')

/** What was found, with what the run says already in its place. */
export const foundAgain = (found: FileFound, data: Fields): FileFound => {
  const columns = Object.entries(fieldsIn(data.columns)).map(([name, how]): [string, ChosenColumn] => {
    const { from, unit, format } = fieldsIn(how)
    return [name, { from: textIn(from), unit: textIn(unit), format: textIn(format) }]
  })
  const decimal = data.decimal === '.' || data.decimal === ',' ? data.decimal : found.decimal
  return { ...found, decimal, chosen: { ...found.chosen, ...Object.fromEntries(columns) } }
}

/**
 * What the run says under `readings`. `file` is its name beside the run. Of `before`, what it said until now, that stays
 * which is not chosen here: a window, a scale, marks of missing values.
 */
export const dataFields = (
  file: string,
  found: Pick<FileFound, 'decimal' | 'delimiter' | 'skip' | 'missing'>,
  chosen: Readonly<Record<string, ChosenColumn>>,
  before: Fields = {},
): Record<string, Plain> => {
  const columns = Object.entries(chosen).flatMap(([name, { from, unit, format }]): [string, Plain][] => {
    if (from === '') return []
    const { unit: _, format: __, ...others } = fieldsIn(fieldsIn(before.columns)[name])
    return [[name, { ...(others.from === from ? others : {}), from, ...(format ? { format } : { unit }) }]]
  })
  const { file: _, columns: __, decimal: ___, ...others } = before
  return {
    file,
    columns: Object.fromEntries(columns),
    ...(found.decimal ? { decimal: found.decimal } : {}),
    delimiter: found.delimiter,
    skip: String(found.skip),
    ...(found.missing.length > 0 ? { missing: [...found.missing] } : {}),
    ...others,
  }
}

/** Ending of a data file that readers take; `csv` for any other. */
export const dataEnding = (name: string): string => {
  const ending = (/\.([A-Za-z0-9]+)$/.exec(name)?.[1] ?? '').toLowerCase()
  return ['csv', 'tsv', 'txt', 'dat', 'log'].includes(ending) ? ending : 'csv'
}
