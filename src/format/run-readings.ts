/** The readings of a run: the block in its file, or the data file beside it. */
import { makeProblem, problemOfFault } from '../problems/make.ts'
import type { Problem } from '../problems/types.ts'
import { fileReadings, type TextFile } from './data-file.ts'
import type { RunFields } from './kinds/run.ts'
import { readReadings } from './readings.ts'
import { type CellFault, readTable } from './table.ts'
import type { Readings, RecordBase, SourceFile } from './types.ts'

export type RunReadings = {
  /** Null where they cannot be read; the problems say why. */
  readonly readings: Readings | null
  /** Of the run; finds the cells of a data file, too. */
  readonly source: SourceFile
  readonly problems: readonly Problem[]
}

/** `fileOf` gives a file by path; undefined where it is not there. */
export function runReadings(
  base: RecordBase,
  fields: RunFields,
  fileOf: (path: string) => TextFile | undefined,
): RunReadings {
  const read = typeof fields.readings === 'string' ? ownReadings(base, fields.readings, fields) : null
  if (read) return atLeastOneRow(read, fields)
  const file = fileReadings(base, fields, fileOf)
  if (!file.ok) return { readings: null, source: base.source, problems: file.error }
  const { readings, source, warnings } = file.value
  return atLeastOneRow({ readings, source, problems: warnings }, fields)
}

function ownReadings({ source }: RecordBase, text: string, { missing }: RunFields): RunReadings {
  if (!text.trimEnd().includes('\n')) {
    const message = 'the readings are not a table: all stands on one line'
    const hint = 'write `readings: |` and put names, units and each row on an indented line of its own'
    const at = source.locate(['readings'], 'key')
    const problem = makeProblem({ code: 'readings/no-table', message, at, hint })
    return { readings: null, source, problems: [problem] }
  }
  const read = readReadings(readTable(text), missing)
  if (read.ok) return { readings: read.value, source, problems: [] }
  return { readings: null, source, problems: read.error.map((fault) => cellProblem(fault, source)) }
}

/** A test that was broken off may have none. */
function atLeastOneRow(read: RunReadings, { stopped }: RunFields): RunReadings {
  const { readings, source } = read
  if (!readings || readings.rows > 0 || stopped !== undefined) return read
  const at = source.locateCell(-1, -1)
  const hint =
    'write one row a line below the units, or say `stopped: …` where the test was broken off before a reading'
  const problem = makeProblem({ code: 'readings/no-rows', message: 'the table has no row', at, hint })
  return { readings: null, source, problems: [problem] }
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
