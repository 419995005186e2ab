/** The curve of one way: Δp = a Q + b Q² through the origin, by least squares. */
import { fitLinear, type LinearFit } from '../../quantity/fit-linear.ts'
import { filled } from '../../quantity/loops.ts'
import type { Part } from '../../quantity/types.ts'
import type { Column, Columns } from '../method.ts'
import type { Group } from './select.ts'

export type Curve = {
  readonly way: Group['way']
  /** Means of the blocks; up to 64 rows each row is its own block. */
  readonly flow: Float64Array
  readonly square: Float64Array
  readonly drop: Float64Array
  /** Coefficients a and b; null where the flows do not tell them apart. */
  readonly fit: LinearFit | null
  readonly highest: number
}

const means = (column: Column | undefined, { rows, starts }: Group, power: 1 | 2 = 1): Float64Array =>
  filled(starts.length - 1, (block) => {
    const [from, to] = [starts[block] as number, starts[block + 1] as number]
    let sum = 0
    for (let k = from; k < to; k += 1) sum += (column?.values[rows[k] as number] ?? Number.NaN) ** power
    return sum / (to - from)
  })

export const curveOf = (columns: Columns, group: Group): Curve => {
  const flow = means(columns.flow, group)
  const square = means(columns.flow, group, 2)
  const drop = means(columns.pressure_drop, group)
  const fit = flow.length < 2 ? null : fitLinear([flow, square], drop)
  return { way: group.way, flow, square, drop, fit, highest: Math.max(...flow) }
}

/** Δp at a flow, Pa; NaN where there is no fit. */
export const dropAt = ({ fit }: Curve, flow: number): number =>
  fit ? (fit.coefficients[0] ?? 0) * flow + (fit.coefficients[1] ?? 0) * flow * flow : Number.NaN

/** Where the curve would meet zero flow if it were not held to the origin; null below five points. */
export const intercept = ({
  flow,
  square,
  drop,
}: Curve): { value: number; u: number; dof: number } | null => {
  const free = flow.length < 5 ? null : fitLinear([filled(flow.length, () => 1), flow, square], drop)
  if (!free) return null
  return { value: free.coefficients[0] ?? 0, u: free.uncertainties[0] ?? 0, dof: free.dof }
}

/** Parts of x·a + y·b: two orthogonal ones that share the degrees of freedom of the fit. None without scatter. */
export const scatterOf = ({ way, fit }: Curve, x: number, y: number): Record<string, Part> => {
  if (!fit || fit.dof < 1) return {}
  const pool = `curve-${way}`
  const part = (k: number): Part => ({
    u: x * (fit.factor[0]?.[k] ?? 0) + y * (fit.factor[1]?.[k] ?? 0),
    dof: fit.dof,
    pool,
    shape: 't',
  })
  return { [`${pool}/1`]: part(0), [`${pool}/2`]: part(1) }
}
