/** The table of corrections of a calibration: what the instrument reads, and what to add to it. */
import { describeDimension, sameDimension } from '../../quantity/dimension.ts'
import type { Dimension, Result } from '../../quantity/types.ts'
import { parseUnit } from '../../quantity/unit-text.ts'
import { cellSpan } from '../cell-places.ts'
import { readReadings } from '../readings.ts'
import { type CellFault, readTable } from '../table.ts'

type Correction = { readonly reading: number; readonly add: number }

/**
 *     reading  add
 *     Pa       Pa
 *     -5000    3
 *     0        0
 *
 * in SI and in rising order of the reading. A correction of a temperature is a difference: `K`, not `°C`.
 */
export function readCorrections(text: string, dim: Dimension): Result<readonly Correction[]> {
  const read = correctionsOf(text, dim)
  if (read.ok) return read
  let start = 0
  const lines = text.split('\n').map((line) => {
    start += line.length + 1
    return { text: line, start: start - line.length - 1 }
  })
  const placed = ({ row, column, ...fault }: CellFault) => ({
    ...fault,
    ...cellSpan(lines, row, column),
  })
  return { ok: false, error: read.error.map(placed) }
}

function correctionsOf(text: string, dim: Dimension): Result<readonly Correction[], readonly CellFault[]> {
  const read = readReadings(readTable(text))
  if (!read.ok) return read
  const [reading, add] = read.value.columns
  const refuse = (code: string, message: string, row: number, column: number, hint?: string) =>
    ({ ok: false, error: [{ code, message, row, column, hint }] }) as const
  if (reading?.name !== 'reading' || add?.name !== 'add' || read.value.columns.length !== 2) {
    const hint = 'the columns are `reading` and `add`: what the instrument shows, and what to add to it'
    return refuse('instrument/corrections', 'this is no table of corrections', -2, -1, hint)
  }
  for (const [index, column] of [reading, add].entries()) {
    if (sameDimension(column.dim, dim)) continue
    const message = `\`${column.name}\` is a ${describeDimension(column.dim)}, the instrument reads a ${describeDimension(dim)}`
    return refuse('unit/wrong-dimension', message, -1, index)
  }
  const unit = parseUnit(add.unit)
  if (unit.ok && unit.value.offset !== 0) {
    const hint = 'write `K` or `delta degC`'
    return refuse(
      'unit/meaning',
      `a correction is a difference, \`${add.unit}\` is a temperature`,
      -1,
      1,
      hint,
    )
  }
  const pairs = Array.from(reading.values, (value, row) => ({
    reading: value,
    add: add.values[row] ?? Number.NaN,
  }))
  const gap = pairs.findIndex((pair) => Number.isNaN(pair.reading) || Number.isNaN(pair.add))
  if (gap >= 0) return refuse('instrument/corrections', 'a correction is missing here', gap, -1)
  const back = pairs.findIndex((pair, row) => row > 0 && pair.reading <= (pairs[row - 1]?.reading ?? 0))
  if (back >= 0) return refuse('instrument/corrections', 'the readings do not rise from row to row', back, 0)
  return { ok: true, value: pairs }
}
