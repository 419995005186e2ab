/** Repeats of one position on one side, and what their mean is as an angle. */
import type { Columns, Givens } from '../method.ts'
import { type Group, groupsOf, meanOf, rowsOf } from '../repeats.ts'

export type Side = 'left' | 'right' | ''
export type Column = 'angle' | 'offset' | 'force'

export type Cell = Group & { readonly position: string; readonly side: Side; readonly column: Column }

const sideOf = (columns: Columns, row: number): Side => {
  const text = columns.side?.texts?.[row]
  return text === 'left' || text === 'right' ? text : ''
}

/** One cell for each position and side; of forces one for each way as well. */
export const cellsOf = (columns: Columns, column: Column, positions: readonly string[]): Cell[] =>
  groupsOf(rowsOf(columns[column]), (row) => {
    const position = columns.position?.texts?.[row] ?? ''
    if (!positions.includes(position)) return undefined
    const way = column !== 'force' ? '' : (columns.force?.values[row] ?? 0) < 0 ? '-' : '+'
    return `${position}/${sideOf(columns, row)}/${way}`
  }).map((group) => {
    const [position = '', side = ''] = group.name.split('/')
    const name = group.name.replaceAll('/', ' ').trim()
    return { name, rows: group.rows, position, side: side as Side, column }
  })

/** Of an offset o at radius r: 2·asin(o/2r) where it is a chord, asin(o/r) where it was read square to neutral. */
export const angleOf = (offset: number, { numbers, words }: Givens): number => {
  const radius = numbers.radius ?? Number.NaN
  return words.offset_as === 'square' ? Math.asin(offset / radius) : 2 * Math.asin(offset / (2 * radius))
}

/** The same the other way: what is read at an angle. */
export const offsetOf = (angle: number, { numbers, words }: Givens): number => {
  const radius = numbers.radius ?? Number.NaN
  return words.offset_as === 'square' ? radius * Math.sin(angle) : 2 * radius * Math.sin(angle / 2)
}

/** Mean reading of a cell, moved by `move`, as an angle (as a force where it is one). */
export const readingOf = (columns: Columns, givens: Givens, cell: Cell, move = 0): number => {
  const mean = meanOf((row) => columns[cell.column]?.values[row] ?? Number.NaN, cell.rows) + move
  return cell.column === 'offset' ? angleOf(mean, givens) : mean
}
