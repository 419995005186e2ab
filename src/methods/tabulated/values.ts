/** The value of each aggregate over the rows that were chosen for it. SI; NaN where there is none. */

import { fitLine, type Line } from '../../quantity/fit.ts'
import { evaluate } from '../../quantity/formula/index.ts'
import { mean } from '../../quantity/statistics.ts'
import { blockStarts, FAST_ROWS } from '../blocks.ts'
import type { Columns, Givens } from '../method.ts'
import { type Aggregate, isLabel } from './aggregates.ts'
import type { Pick } from './select.ts'

const at = (values: ArrayLike<number>, row: number | undefined): number => values[row ?? -1] ?? Number.NaN

/** Readings of the chosen rows, in the order of the choice. */
export const taken = (columns: Columns, name: string | undefined, rows: Int32Array): Float64Array => {
  const values = columns[name ?? '']?.values ?? new Float64Array(0)
  // All rows as they stand; two of two may also be the other way round.
  if (rows.length === values.length && rows[0] === 0) return values
  const found = new Float64Array(rows.length)
  for (let i = 0; i < rows.length; i += 1) found[i] = at(values, rows[i])
  return found
}

/** As they are up to 64 of them; means of equal blocks of what was logged fast. */
export const blocked = (values: Float64Array): Float64Array => {
  if (values.length <= FAST_ROWS) return values
  const starts = blockStarts(values.length)
  return Float64Array.from({ length: starts.length - 1 }, (_, block) =>
    mean(values.subarray(starts[block], starts[block + 1])),
  )
}

export const lineOf = (columns: Columns, { aggregate, rows }: Pick): Line =>
  fitLine(blocked(taken(columns, aggregate.x?.name, rows)), blocked(taken(columns, aggregate.y.name, rows)))

/** Width of the trapezoids on both sides of each reading: the weight of that reading in the area. */
export const weightsOf = (x: Float64Array): Float64Array => {
  const last = x.length - 1
  const weights = new Float64Array(x.length)
  for (let i = 0; i <= last; i += 1) weights[i] = (at(x, i < last ? i + 1 : i) - at(x, i > 0 ? i - 1 : i)) / 2
  return weights
}

/** Whether the value is a mean over its rows, and not one reading or a place between two. */
export const isMean = ({ name, x }: Aggregate): boolean =>
  name === 'mean' || (name === 'at' && x !== undefined && isLabel(x))

/** Where `at` looks between its two readings, 0 at the first and 1 at the second; and how steep it is there. */
export const between = (
  columns: Columns,
  givens: Givens,
  { aggregate, rows }: Pick,
): { readonly share: number; readonly steepness: number } => {
  const [x0, x1] = taken(columns, aggregate.x?.name, rows)
  const [y0, y1] = taken(columns, aggregate.y.name, rows)
  const { place } = aggregate
  if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined)
    return { share: 0, steepness: 0 }
  const value = place && 'node' in place ? evaluate(place.node, givens.numbers) : null
  const share = value?.ok ? (value.value - x0) / (x1 - x0) : Number.NaN
  return { share, steepness: (y1 - y0) / (x1 - x0) }
}

export const aggregateValue = (columns: Columns, givens: Givens, pick: Pick): number => {
  const { aggregate, rows, readings, refused } = pick
  if (aggregate.name === 'count') return refused ? Number.NaN : readings
  if (refused) return Number.NaN
  const y = taken(columns, aggregate.y.name, rows)
  if (isMean(aggregate)) return mean(y)
  switch (aggregate.name) {
    case 'slope':
      return lineOf(columns, pick).slope
    case 'range':
      return at(y, 0) - at(y, 1)
    case 'at': {
      const { share } = between(columns, givens, pick)
      return share === 0 ? at(y, 0) : at(y, 0) + share * (at(y, 1) - at(y, 0))
    }
    case 'integral': {
      const x = taken(columns, aggregate.x?.name, rows)
      let area = 0
      for (let i = 1; i < x.length; i += 1)
        area += ((at(y, i) + at(y, i - 1)) / 2) * (at(x, i) - at(x, i - 1))
      return area
    }
    default:
      return at(y, 0)
  }
}
