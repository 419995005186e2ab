/** How single readings scatter, from readings one after the other at one level. */
import type { Part } from '../../quantity/types.ts'

export type Scatter = Readonly<Record<string, Part>>

/** Standard deviation of a single reading and its degrees of freedom; 0 and 0 where too few readings show none. */
export type Spread = { readonly s: number; readonly dof: number }

/**
 * From successive differences within each group (von Neumann 1941): s² = Σ(x_{i+1} − x_i)²/(2 N) over all N differences.
 * What creeps slowly within a group does not count as scatter. Degrees of freedom 2N/3, rounded down for safety.
 */
export const spreadOf = (values: ArrayLike<number>, groups: readonly (readonly number[])[]): Spread => {
  let squares = 0
  let count = 0
  for (const rows of groups) {
    const readings = rows.map((row) => values[row] ?? Number.NaN).filter((value) => !Number.isNaN(value))
    for (let i = 1; i < readings.length; i += 1) {
      squares += ((readings[i] as number) - (readings[i - 1] as number)) ** 2
      count += 1
    }
  }
  return count < 2
    ? { s: 0, dof: 0 }
    : { s: Math.sqrt(squares / (2 * count)), dof: Math.floor((2 * count) / 3) || 1 }
}

/** One orthogonal part; none without scatter. */
export const part = (pool: string, name: string, u: number, { s, dof }: Spread): Scatter =>
  s > 0 && dof > 0 && u !== 0 ? { [`${pool}/${name}`]: { u, dof, pool, shape: 't' } } : {}

export const times = (scatter: Scatter, factor: number): Scatter =>
  Object.fromEntries(Object.entries(scatter).map(([key, one]) => [key, { ...one, u: one.u * factor }]))
