/** Which rows count, in which blocks: chosen once from the readings as they are and held fixed. */
import { fitLine } from '../../quantity/fit.ts'
import { blockStarts } from '../blocks.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { columnsUsed, type Span } from './readings.ts'

export type Hold = {
  /** Rows after the settle time in which nothing is missing, in order. */
  readonly rows: Int32Array
  /** Where each block begins among `rows`, and their number at the end. */
  readonly starts: Int32Array
  readonly span: Span
  readonly skipped: number
  /** Scatter of single readings by column, SI. */
  readonly residual: Readonly<Record<string, number>>
}

/** `select` makes every selection of this method, so it has this form. */
export const asHold = (selection: Selection): Hold => selection as Hold

/** About a straight line or from neighbour to neighbour, whichever is smaller: a smooth curve is no scatter. */
const scatterOf = (times: Float64Array, values: Float64Array): number => {
  if (values.length < 3) return 0
  const squares = values.reduce(
    (sum, value, k) => (k > 0 ? sum + (value - (values[k - 1] as number)) ** 2 : sum),
    0,
  )
  return Math.min(fitLine(times, values).residual, Math.sqrt(squares / (2 * (values.length - 1))))
}

export const select = (columns: Columns, givens: Givens): Selection => {
  const time = columns.time?.values ?? new Float64Array(0)
  const used = columnsUsed(columns)
  // The tolerance keeps 1 min in minutes from missing 60 s by a float's tail.
  const from = (time.find((t) => Number.isFinite(t)) ?? 0) + (givens.numbers.settle ?? 0) * (1 - 1e-9)
  const complete = (row: number) =>
    used.every((name) => Number.isFinite(columns[name]?.values[row]) && columns[name]?.missing?.[row] !== 1)
  const held = [...time.keys()].filter((row) => (time[row] as number) >= from)
  const rows = held.filter(complete)
  const at = (name: string) => Float64Array.from(rows, (row) => columns[name]?.values[row] ?? Number.NaN)
  const times = at('time')
  const hold: Hold = {
    rows: Int32Array.from(rows),
    starts: blockStarts(rows.length),
    span: { start: times[0] ?? 0, end: times[times.length - 1] ?? 0 },
    skipped: held.length - rows.length,
    residual: Object.fromEntries(used.map((name) => [name, scatterOf(times, at(name))])),
  }
  return hold
}
