/** Which rows belong together: chosen once from the readings as they are. */
import { blockStarts } from '../blocks.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { curveOf, dropAt } from './curve.ts'
import { requiredFlow, type Way } from './required.ts'

/** Rows of one way in the order of the run; `any` where the direction was not read. */
export type Group = {
  readonly way: Way | 'any'
  readonly rows: readonly number[]
  readonly starts: Int32Array
}

export type Choice = Selection & {
  readonly groups: readonly Group[]
  /** Of `groups`, the one with the larger drop; −1 where there is none. */
  readonly worst: number
}

/** The flow asked of a group: without a direction, the larger of both ways. */
export const askedOf = (givens: Givens, way: Group['way']): number | undefined => {
  if (way !== 'any') return requiredFlow(givens, way)
  const flows = [requiredFlow(givens, 'in'), requiredFlow(givens, 'out')].filter((flow) => flow !== undefined)
  return flows.length > 0 ? Math.max(...flows) : undefined
}

const groupsOf = (columns: Columns): Group[] => {
  const read = (name: string, row: number) => columns[name]?.values[row] ?? Number.NaN
  const rows = Array.from(columns.flow?.values ?? [], (_, row) => row).filter(
    (row) => !Number.isNaN(read('flow', row)) && !Number.isNaN(read('pressure_drop', row)),
  )
  const direction = columns.direction
  const ways = direction ? (['in', 'out'] as const) : (['any'] as const)
  return ways
    .map((way) => {
      const own = direction ? rows.filter((row) => direction.texts?.[row] === way) : rows
      return { way, rows: own, starts: blockStarts(own.length) }
    })
    .filter((group) => group.rows.length > 0)
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const groups = groupsOf(columns)
  const curves = groups.map((group) => curveOf(columns, group))
  const common = Math.min(...curves.map((curve) => curve.highest))
  const asked = groups.map(({ way }) => askedOf(givens, way))
  const noneAsked = asked.every((flow) => flow === undefined)
  // The worse way is that with the larger drop at what is asked of it; with nothing asked, at one and the same flow.
  const drops = curves.map((curve, k) => dropAt(curve, noneAsked ? common : (asked[k] ?? 0)))
  const sizes = drops.map((drop) => (Number.isFinite(drop) ? drop : Number.NEGATIVE_INFINITY))
  return { groups, worst: sizes.length > 0 ? Math.max(0, sizes.indexOf(Math.max(...sizes))) : -1 }
}
