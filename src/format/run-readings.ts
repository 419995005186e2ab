/** The readings of a run: the block in its file, or the CSV file beside it. */
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import type { Result } from '../quantity/types.ts'
import type { RunFields } from './kinds/run.ts'
import { readReadings } from './readings.ts'
import { type CellFault, readCsv, readTable } from './table.ts'
import type { Readings, RecordBase, SourceFile } from './types.ts'

/** `textOf` gives the text of a file by path; undefined where it is not there. */
export function runReadings(
  base: RecordBase,
  fields: RunFields,
  textOf: (file: string) => string | undefined,
): Result<Readings, Problem[]> {
  const { source } = base
  const { readings } = fields
  if (typeof readings !== 'string') return fileReadings(base, readings, fields.missing, textOf)
  if (!readings.trimEnd().includes('\n')) {
    const message = 'the readings are not a table: all stands on one line'
    const hint = 'write `readings: |` and put names, units and each row on an indented line of its own'
    const at = source.locate(['readings'], 'key')
    return { ok: false, error: [makeProblem({ code: 'readings/no-table', message, at, hint })] }
  }
  return located(readReadings(readTable(readings), fields.missing), fields, source)
}

function fileReadings(
  { id, source }: RecordBase,
  options: Readonly<Record<string, unknown>>,
  missing: readonly string[],
  textOf: (file: string) => string | undefined,
): Result<Readings, Problem[]> {
  const refuse = (
    message: string,
    path: readonly string[],
    hint: string,
    part: 'key' | 'value' = 'value',
  ): Result<Readings, Problem[]> => {
    const at = source.locate(['readings', ...path], part)
    return { ok: false, error: [makeProblem({ code: 'readings/file', message, at, hint })] }
  }
  const other = Object.keys(options).find((name) => name !== 'file')
  if (other !== undefined) {
    const hint = 'write the file as CSV with commas, a line of names and a line of units'
    return refuse(`the option \`${other}\` of a data file cannot be read yet`, [other], hint, 'key')
  }
  const { file } = options
  const wanted = `${id}.csv`
  if (file !== wanted) {
    const written = typeof file === 'string' ? `\`${file}\`` : 'nothing'
    const message = `the data file of a run has the name of the run, not ${written}`
    return refuse(message, typeof file === 'string' ? ['file'] : [], `name it \`${wanted}\`, beside the run`)
  }
  const text = textOf(`${source.path.slice(0, source.path.lastIndexOf('/') + 1)}${file}`)
  if (text === undefined) {
    return refuse(
      `there is no file \`${file}\` beside the run`,
      ['file'],
      'put the data file into the folder of the run',
    )
  }
  return located(readReadings(readCsv(text), missing, file), undefined, source)
}

function located(
  read: Result<Readings, readonly CellFault[]>,
  fields: RunFields | undefined,
  source: SourceFile,
): Result<Readings, Problem[]> {
  if (!read.ok) return { ok: false, error: read.error.map((fault) => cellProblem(fault, source)) }
  if (read.value.rows > 0 || fields?.stopped !== undefined) return read
  const at = source.locateCell(-1, -1)
  const hint =
    'write one row a line below the units, or say `stopped: …` where the test was broken off before a reading'
  return {
    ok: false,
    error: [makeProblem({ code: 'readings/no-rows', message: 'the table has no row', at, hint })],
  }
}

function cellProblem(fault: CellFault, source: SourceFile): Problem {
  const cell = source.locateCell(fault.row, fault.column)
  const { span } = fault
  const at =
    span && span.end > span.start
      ? {
          ...cell,
          column: cell.column + span.start,
          endColumn: Math.min(cell.endColumn, cell.column + span.end),
        }
      : cell
  return problemOfFault({ ...fault, start: 0, end: 1 }, at, fault.severity ?? 'error')
}
