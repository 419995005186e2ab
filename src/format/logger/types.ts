/** What is said of a logger file, and what is found in it. Plain data: the check, the form and `look` share it. */
import type { Fault, Stated } from '../../quantity/types.ts'
import type { FieldPath, Readings } from '../types.ts'
import type { KeptScans } from './kept.ts'

export type Encoding = 'UTF-8' | 'UTF-16 LE' | 'UTF-16 BE' | 'Windows-1252'

/** The text of a file, with what was seen of its bytes. */
export type LoggerText = {
  /** Without a byte order mark; lines end in `\n` or `\r\n`. */
  readonly text: string
  /** Absent where the text did not come from bytes. */
  readonly encoding?: Encoding
  /** The last sign is incomplete: the file was cut off. */
  readonly cut?: boolean
  /** Set by those who read a text several times. */
  readonly kept?: KeptScans
}

/** A blank stands for any run of blanks and tabs. */
export type Delimiter = ',' | ';' | '\t' | '|' | ' '
export type Decimal = '.' | ','

/** Where one column of the readings comes from. */
export type LoggerColumn = {
  /** Name of the file's column as it stands there, or its number from 1. */
  readonly from: string
  readonly unit?: string
  /** Of a time: `DD.MM.YYYY HH:mm:ss`. */
  readonly format?: string
  /** The number in the file times this is in `unit`. */
  readonly scale?: number
  /** Added after the scale; a difference, also of a temperature. */
  readonly offset?: Stated
}

/** Seconds since the first sample, seconds since midnight, or a line of the file counted from 1. */
export type UsePoint =
  | { readonly form: 'elapsed'; readonly seconds: number }
  | { readonly form: 'clock'; readonly seconds: number }
  | { readonly form: 'line'; readonly line: number }

/** What the front matter says under `readings`, beside the name of the file. */
export type LoggerOptions = {
  /** Absent: the file has the names of the method's columns, and a line of units below them. */
  readonly columns?: Readonly<Record<string, LoggerColumn>>
  readonly decimal?: Decimal
  readonly delimiter?: Delimiter
  /** Lines before the names; where all columns are named by number, lines before the first reading. */
  readonly skip?: number
  readonly use?: { readonly from?: UsePoint; readonly to?: UsePoint }
  readonly missing?: readonly string[]
}

/** Offsets in the text of the data file, or the way to a field below `readings` in the run. */
export type LoggerPlace =
  | { readonly in: 'data'; readonly start: number; readonly end: number }
  | { readonly in: 'run'; readonly path: FieldPath; readonly part: 'key' | 'value' }

export type LoggerFault = Omit<Fault, 'start' | 'end'> & {
  readonly at: LoggerPlace
  readonly severity?: 'warning'
}

export type LoggerReadings = {
  readonly readings: Readings
  readonly warnings: readonly LoggerFault[]
  /** Row −2 is the names, −1 the units; column −1 is the whole line. */
  readonly placeOf: (row: number, column: number) => LoggerPlace
  /** Line of the file, from 1, on which a row stands. */
  readonly lineOf: (row: number) => number
}

/** How the file is written, as said or as found. */
export type Dialect = {
  readonly delimiter: Delimiter
  readonly decimal: Decimal
}
