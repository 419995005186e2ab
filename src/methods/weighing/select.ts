/** Which rows weigh which point on which scale, and which add or remove an item: by names, never by numbers. */

import { fitLinear } from '../../quantity/fit-linear.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { type Group, groupsOf, meanOf, type Spread, spreadOf } from '../repeats.ts'
import { type Action, actionOf, itemsOf, pointsOf, scalesOf } from './names.ts'

/** Readings of one point on one scale; `name` is `<point>/<column>`. */
export type Cell = Group & { readonly point: string; readonly column: string }
export type ItemRow = {
  readonly item: string
  readonly action: Action
  readonly row: number
  readonly column: string | null
}

export type Choice = Selection & {
  readonly points: readonly string[]
  readonly cells: readonly Cell[]
  readonly items: readonly ItemRow[]
  readonly spread: Spread
  /** Two cells of one point whose means differ most, the higher first. */
  readonly apart: readonly [Cell, Cell] | null
  /** So many pairs were compared for it. */
  readonly pairs: number
}

/** What a row shows without its tare. */
export const netOf = (columns: Columns, column: string, row: number): number => {
  const tare = columns.tare?.values[row] ?? Number.NaN
  return (columns[column]?.values[row] ?? Number.NaN) - (Number.isNaN(tare) ? 0 : tare)
}

const scaleOfRow = (columns: Columns, row: number): string | null =>
  scalesOf(columns).find((name) => !Number.isNaN(columns[name]?.values[row] ?? Number.NaN)) ?? null

const cellsOf = (columns: Columns, points: readonly string[]): Cell[] => {
  const texts = columns.point?.texts ?? []
  const weighed = texts.flatMap((point, row) =>
    actionOf(columns, row) === 'weigh' && points.includes(point) ? [row] : [],
  )
  return groupsOf(weighed, (row) => {
    const column = scaleOfRow(columns, row)
    return column === null ? undefined : `${texts[row]}/${column}`
  }).map((group) => {
    const [point = '', column = ''] = group.name.split('/')
    return { ...group, point, column }
  })
}

const itemRows = (columns: Columns, items: readonly string[]): ItemRow[] =>
  (columns.point?.texts ?? []).flatMap((item, row) => {
    const action = actionOf(columns, row)
    return action !== 'weigh' && items.includes(item)
      ? [{ item, action, row, column: scaleOfRow(columns, row) }]
      : []
  })

/** Two scales under one point, in both orders. */
const pairsOf = (cells: readonly Cell[]): (readonly [Cell, Cell])[] =>
  cells.flatMap((a) => cells.filter((b) => b.point === a.point && b !== a).map((b) => [a, b] as const))

const apartOf = (columns: Columns, cells: readonly Cell[]): readonly [Cell, Cell] | null => {
  const mean = (cell: Cell) => meanOf((row) => netOf(columns, cell.column, row), cell.rows)
  const pairs = pairsOf(cells)
  const gap = ([a, b]: readonly [Cell, Cell]) => mean(a) - mean(b)
  return pairs.reduce<readonly [Cell, Cell] | null>(
    (widest, pair) => (!widest || gap(pair) > gap(widest) ? pair : widest),
    null,
  )
}

/**
 * Scatter of single readings. Where each scale stood under a point but once, what is left after a level of each point
 * and a level of each scale shows it; the scales' own differences are in the budget already.
 */
const scatterOf = (columns: Columns, points: readonly string[], cells: readonly Cell[]): Spread => {
  const readings = cells.flatMap(({ point, column, rows }) =>
    rows.map((row) => ({ point, column, row, net: netOf(columns, column, row) })),
  )
  const columnOf = new Map(readings.map(({ row, column }) => [row, column]))
  const within = spreadOf((row) => netOf(columns, columnOf.get(row) ?? '', row), cells)
  const scales = [...new Set(cells.map(({ column }) => column))]
  const levels = [
    ...points.map((point) => readings.map((reading) => (reading.point === point ? 1 : 0))),
    ...scales.slice(1).map((scale) => readings.map((reading) => (reading.column === scale ? 1 : 0))),
  ]
  const fit = fitLinear(
    levels,
    readings.map(({ net }) => net),
  )
  return fit && fit.dof > within.dof ? { sd: fit.residual, dof: fit.dof } : within
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const points = pointsOf(givens)
  const cells = cellsOf(columns, points)
  return {
    points,
    cells,
    items: itemRows(columns, itemsOf(givens)),
    spread: scatterOf(columns, points, cells),
    apart: apartOf(columns, cells),
    pairs: pairsOf(cells).length / 2,
  }
}
