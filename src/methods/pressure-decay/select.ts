/** Which rows count, in which blocks: chosen once from the readings as they are and held fixed. */
import { fitLine } from '../../quantity/fit.ts'
import { blockStarts, cellStarts } from '../blocks.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { columnsUsed, type Span } from './readings.ts'
import { validate } from './validate.ts'

export type Hold = {
  /** Rows after the settle time in which nothing is missing, in order. */
  readonly rows: Int32Array
  /** Where each cell begins among `rows`: single rows, or means of a few where there are thousands. */
  readonly cells: Int32Array
  /** Where each block begins among the cells, and their number at the end. */
  readonly starts: Int32Array
  readonly span: Span
  /** Rows after the settle time that were left out because a reading is missing. */
  readonly skipped: number
  /** Scatter of single readings by column, SI. */
  readonly residual: Readonly<Record<string, number>>
  /** What is wrong with the readings and givens together: then there is no estimate. */
  readonly refused: string | null
}

/** `select` makes every selection of this method, so it has this form. */
export const asHold = (selection: Selection): Hold => selection as Hold

/**
 * Scatter of single readings, SI: about a straight line or from neighbour to neighbour, whichever is smaller. A
 * smooth curve is no scatter, and neither are readings that jump by a digit now and then.
 */
const scatterOf = (times: Float64Array, values: Float64Array): number => {
  if (values.length < 3) return 0
  let squares = 0
  for (let k = 1; k < values.length; k += 1) {
    squares += ((values[k] as number) - (values[k - 1] as number)) ** 2
  }
  return Math.min(fitLine(times, values).residual, Math.sqrt(squares / (2 * (values.length - 1))))
}

export const select = (columns: Columns, givens: Givens): Selection => {
  const time = columns.time?.values ?? new Float64Array(0)
  const used = columnsUsed(columns)
  // The tolerance keeps 10 min in minutes from missing 600 s by a float's tail.
  const from = (time.find((t) => Number.isFinite(t)) ?? 0) + (givens.numbers.settle ?? 0) * (1 - 1e-9)
  const read = used.map((name) => columns[name]?.values ?? new Float64Array(0))
  const marked = used.flatMap((name) => columns[name]?.missing ?? [])
  const complete = (row: number) =>
    read.every((values) => Number.isFinite(values[row] ?? Number.NaN)) &&
    marked.every((missing) => missing[row] !== 1)
  const found = new Int32Array(time.length)
  let count = 0
  let skipped = 0
  for (let row = 0; row < time.length; row += 1) {
    if (!((time[row] as number) >= from)) continue
    if (complete(row)) found[count++] = row
    else skipped += 1
  }
  const rows = found.subarray(0, count)
  const at = (values: Float64Array) => {
    const picked = new Float64Array(count)
    for (let k = 0; k < count; k += 1) picked[k] = values[rows[k] as number] as number
    return picked
  }
  const times = at(time)
  const cells = cellStarts(count)
  const error = validate(columns, givens).find((finding) => finding.severity !== 'warning')
  const hold: Hold = {
    rows,
    cells,
    starts: blockStarts(cells.length - 1),
    span: { start: times[0] ?? 0, end: times[count - 1] ?? 0 },
    skipped,
    residual: Object.fromEntries(
      used.map((name, k) => [name, scatterOf(times, at(read[k] as Float64Array))]),
    ),
    refused: error ? `${error.message}.` : null,
  }
  return hold
}
