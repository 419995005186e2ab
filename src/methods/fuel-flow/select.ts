/** Which rows are fitted, in which blocks, and where the flow first failed. */
import { fitLine } from '../../quantity/fit.ts'
import { blockStarts } from '../blocks.ts'
import type { Columns, Givens, Selection } from '../method.ts'

export type Choice = Selection & {
  readonly collected: 'volume' | 'mass'
  /** Rows with a time and a quantity, before the first sign. */
  readonly rows: readonly number[]
  readonly starts: Int32Array
  /** First row with a quantity, from which the tank is counted; −1 where there is none. */
  readonly start: number
  readonly firstSign: number | null
  /** Row of the lowest head among `rows`. */
  readonly lowest: number | null
  /** Scatter of single readings about the line: decides whether their digits average out. */
  readonly residual: number
}

export const at = (columns: Columns, name: string, row: number): number =>
  columns[name]?.values[row] ?? Number.NaN

const lowestOf = (columns: Columns, rows: readonly number[]): number | null =>
  rows.reduce<number | null>((lowest, row) => {
    const head = at(columns, 'head', row)
    if (Number.isNaN(head)) return lowest
    return lowest === null || head < at(columns, 'head', lowest) ? row : lowest
  }, null)

export const select = (columns: Columns, _?: Givens): Choice => {
  const collected = columns.volume ? 'volume' : 'mass'
  const all = Array.from(columns.time?.values ?? [], (_time, row) => row).filter(
    (row) => !Number.isNaN(at(columns, 'time', row)) && !Number.isNaN(at(columns, collected, row)),
  )
  const sign = all.find((row) => columns.event?.texts?.[row] === 'first-sign') ?? null
  const rows = sign === null ? all : all.filter((row) => row < sign)
  const line = fitLine(
    rows.map((row) => at(columns, 'time', row)),
    rows.map((row) => at(columns, collected, row)),
  )
  return {
    collected,
    rows,
    starts: blockStarts(rows.length),
    start: all[0] ?? -1,
    firstSign: sign,
    lowest: lowestOf(columns, rows),
    residual: line.dof > 0 ? line.residual : 0,
  }
}
