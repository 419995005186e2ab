/** From a table as written to columns in SI, with the digits as read. */
import { differenceToSI } from '../quantity/convert.ts'
import { KINDS } from '../quantity/kinds.ts'
import type { Result } from '../quantity/types.ts'
import { clockColumn } from './clock-cells.ts'
import { columnUnit } from './column-units.ts'
import { cellNumber, notNumber, writtenDigit } from './number-cells.ts'
import type { CellFault, Table, TableRead } from './table.ts'
import type { ReadingColumn, Readings } from './types.ts'

type ColumnRead = { readonly column: ReadingColumn; readonly faults: readonly CellFault[] }

const NO_DIMENSION = KINDS.text.dim

/**
 * `missing` lists words that stand for a missing value beside `-` and `n/a` (`OL` of a meter). All faults are
 * given, one a column and kind of fault; without faults the columns have one value a row, NaN where missing.
 */
export function readReadings(
  read: TableRead,
  missing: readonly string[] = [],
  file?: string,
): Result<Readings, readonly CellFault[]> {
  if (read.faults.length > 0) return { ok: false, error: read.faults }
  const { table } = read
  const words = new Set(['-', 'n/a', ...missing])
  const columns = table.names.map((_, index) => readColumn(table, index, words))
  const faults = columns.flatMap((column) => column.faults)
  if (faults.length > 0) return { ok: false, error: faults }
  return { ok: true, value: { rows: table.rows.length, columns: columns.map((read) => read.column), file } }
}

function readColumn(table: Table, index: number, words: ReadonlySet<string>): ColumnRead {
  const name = table.names[index] ?? ''
  const unit = table.units[index] ?? ''
  const cells = table.rows.map((row) => row[index] ?? '')
  const missing = new Uint8Array(cells.length)
  for (let row = 0; row < cells.length; row++) if (words.has(cells[row] ?? '')) missing[row] = 1
  const written = { name, unit, cells, missing }
  if (unit === 'text') {
    const values = new Float64Array(cells.length).fill(Number.NaN)
    return { column: { ...written, values, text: true, digit: 0, dim: NO_DIMENSION }, faults: [] }
  }
  if (unit === 'hh:mm' || unit === 'hh:mm:ss') {
    const { values, faults } = clockColumn(cells, missing, unit, index)
    const column = { ...written, values, text: false, digit: unit === 'hh:mm' ? 60 : 1, dim: KINDS.time.dim }
    return { column, faults }
  }
  return numberColumn(written, index)
}

function numberColumn(
  written: Pick<ReadingColumn, 'name' | 'unit' | 'cells' | 'missing'>,
  index: number,
): ColumnRead {
  const { cells, missing, name } = written
  const unit = columnUnit(written.unit)
  const values = new Float64Array(cells.length).fill(Number.NaN)
  const toSI = unit.ok ? unit.value.toSI : (value: number) => value
  const bad: number[] = []
  let power = Number.POSITIVE_INFINITY
  for (let row = 0; row < cells.length; row++) {
    if (missing[row]) continue
    const cell = cells[row] ?? ''
    const value = cellNumber(cell)
    if (Number.isNaN(value)) bad.push(row)
    values[row] = toSI(value)
    power = Math.min(power, writtenDigit(cell))
  }
  const faults: CellFault[] = []
  if (!unit.ok) {
    for (const { start, end, ...fault } of unit.error) {
      faults.push({ ...fault, row: -1, column: index, span: { start, end } })
    }
  }
  const [first] = bad
  if (first !== undefined) faults.push(notNumber(cells[first] ?? '', name, first, index, bad.length - 1))
  const digit = unit.ok && Number.isFinite(power) ? differenceToSI(10 ** power, unit.value) : 0
  const dim = unit.ok ? unit.value.dim : NO_DIMENSION
  return { column: { ...written, values, text: false, digit, dim }, faults }
}
