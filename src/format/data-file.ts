/** The data file of a run: named in its front matter, lying beside it under the same name. */
import { makeProblem } from '../problems/make.ts'
import { placeOf } from '../problems/place.ts'
import type { Place, Problem } from '../problems/types.ts'
import type { Result } from '../quantity/types.ts'
import { readFields } from './issues.ts'
import { loggerFields, loggerOptions } from './kinds/logger-options.ts'
import type { RunFields } from './kinds/run.ts'
import { decodePieces } from './logger/decode.ts'
import { readLogger } from './logger/read.ts'
import type { LoggerFault, LoggerPlace, LoggerText } from './logger/types.ts'
import type { Readings, RecordBase, SourceFile } from './types.ts'

/** Endings of files that are read as text of readings. */
export const DATA_ENDINGS: readonly string[] = ['csv', 'tsv', 'txt', 'dat', 'log']

export const isDataFile = (path: string): boolean =>
  DATA_ENDINGS.includes(path.slice(path.lastIndexOf('.') + 1).toLowerCase())

export type TextFile = LoggerText & { readonly path: string }

/** A file as it is read from a disk: data files in whatever encoding a logger wrote them, all others in UTF-8. */
export const dataFile = (path: string, bytes: Uint8Array): TextFile => ({ path, ...decodePieces([bytes]) })

export type FileReadings = {
  readonly readings: Readings
  /** Of the run, with the cells of the data file. */
  readonly source: SourceFile
  readonly warnings: readonly Problem[]
}

export function fileReadings(
  { id, source }: RecordBase,
  fields: RunFields,
  fileOf: (path: string) => TextFile | undefined,
): Result<FileReadings, readonly Problem[]> {
  const read = readFields(loggerFields, { readings: fields.readings }, source)
  if (!read.ok) return read
  const { file } = read.value.readings
  const refuse = (message: string, hint: string) => {
    const at = source.locate(['readings', 'file'])
    return { ok: false, error: [makeProblem({ code: 'readings/file', message, at, hint })] } as const
  }
  const [, stem = file, ending = ''] = /^(.*)\.([^.]*)$/.exec(file) ?? []
  if (stem !== id || !isDataFile(file)) {
    const message = `the data file of a run has the name of the run, not \`${file}\``
    const name = `${id}.${isDataFile(file) ? ending : 'csv'}`
    return refuse(message, `name it \`${name}\`, beside the run; ${DATA_ENDINGS.join(', ')} are read`)
  }
  const path = `${source.path.slice(0, source.path.lastIndexOf('/') + 1)}${file}`
  const data = fileOf(path)
  if (!data)
    return refuse(
      `there is no file \`${file}\` beside the run`,
      'put the data file into the folder of the run',
    )
  const text = data.encoding ? data : decodePieces([data.text])
  const placed = (place: LoggerPlace): Place =>
    place.in === 'data'
      ? placeOf(path, text.text, place.start, place.end, 'cell')
      : source.locate(['readings', ...place.path], place.part)
  const problems = (faults: readonly LoggerFault[]) =>
    faults.map(({ at, ...fault }) => makeProblem({ ...fault, at: placed(at) }))
  const logger = readLogger(loggerOptions(read.value.readings, fields.missing), text, file)
  if (!logger.ok) return { ok: false, error: problems(logger.error) }
  const { readings, warnings, placeOf: cellAt } = logger.value
  const located = { ...source, locateCell: (row: number, column: number) => placed(cellAt(row, column)) }
  return { ok: true, value: { readings, source: located, warnings: problems(warnings) } }
}
