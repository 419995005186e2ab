/** From readings to the points that are fitted: one a row, or one a block where logged fast. */
import type { Columns } from '../method.ts'
import { at, type Choice } from './select.ts'

export type Points = { readonly time: Float64Array; readonly collected: Float64Array }

export const pointsOf = (columns: Columns, { rows, starts, collected }: Choice): Points => {
  const first = at(columns, 'time', rows[0] ?? -1)
  const means = (name: string, from: number) =>
    Float64Array.from({ length: starts.length - 1 }, (_, block) => {
      const own = rows.slice(starts[block], starts[block + 1])
      return own.reduce((sum, row) => sum + at(columns, name, row) - from, 0) / own.length
    })
  return { time: means('time', first), collected: means(collected, 0) }
}
