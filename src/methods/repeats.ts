/**
 * Quantities that were read several times each: angles at positions, scales under wheels. What the repeats show of
 * scatter is pooled over all groups (JCGM 100, 4.2.4), since one hand with one instrument read them all; digits that
 * the scatter does not average out are a source of each group, for each was rounded anew.
 */
import type { Part } from '../quantity/types.ts'
import type { Column, Columns, ExtraSource } from './method.ts'

export type Group = { readonly name: string; readonly rows: readonly number[] }

/** Rows that have a value, by the name that `nameOf` gives them; rows without a name belong to none. */
export const groupsOf = (rows: readonly number[], nameOf: (row: number) => string | undefined): Group[] => {
  const groups = new Map<string, number[]>()
  for (const row of rows) {
    const name = nameOf(row)
    if (name === undefined) continue
    const same = groups.get(name)
    if (same) same.push(row)
    else groups.set(name, [row])
  }
  return [...groups].map(([name, own]) => ({ name, rows: own }))
}

/** Rows of a column that hold a number. */
export const rowsOf = (column: Column | undefined): number[] =>
  Array.from(column?.values ?? [], (value, row) => (Number.isNaN(value) ? -1 : row)).filter((row) => row >= 0)

/** NaN for no rows. */
export const meanOf = (readingOf: (row: number) => number, rows: readonly number[]): number =>
  rows.reduce((sum, row) => sum + readingOf(row), 0) / rows.length

/** Standard deviation of single readings about the mean of their group; dof 0 and NaN where none was repeated. */
export type Spread = { readonly sd: number; readonly dof: number }

export const spreadOf = (readingOf: (row: number) => number, groups: readonly Group[]): Spread => {
  const dof = groups.reduce((sum, { rows }) => sum + rows.length - 1, 0)
  const squares = groups.reduce((sum, { rows }) => {
    const middle = meanOf(readingOf, rows)
    return sum + rows.reduce((own, row) => own + (readingOf(row) - middle) ** 2, 0)
  }, 0)
  return { sd: dof > 0 ? Math.sqrt(squares / dof) : Number.NaN, dof }
}

/** A difference of two readings shows no scatter yet: it takes two degrees of freedom. */
const FEWEST = 2

/**
 * Scatter of everything that is computed from group means: one orthogonal part a group, all of one pool.
 * `compute` gives the values with the mean of each group moved by so much (first order, central differences).
 */
export const scatterOfMeans = (
  compute: (moves: Float64Array) => Readonly<Record<string, number>>,
  groups: readonly Group[],
  { sd, dof }: Spread,
  pool: string,
): Record<string, Record<string, Part>> => {
  const scatter: Record<string, Record<string, Part>> = {}
  if (dof < FEWEST || !(sd > 0)) return scatter
  groups.forEach(({ name, rows }, k) => {
    const moved = (by: number) => compute(Float64Array.from(groups, (_, j) => (j === k ? by : 0)))
    const u = sd / Math.sqrt(rows.length)
    const [up, down] = [moved(u), moved(-u)]
    for (const [measure, value] of Object.entries(up)) {
      const half = (value - (down[measure] ?? Number.NaN)) / 2
      if (!Number.isFinite(half) || half === 0) continue
      scatter[measure] = { ...scatter[measure], [`${pool}/${name}`]: { u: half, dof, pool, shape: 't' } }
    }
  })
  return scatter
}

/** Scatter of the measure `repeatability`, the standard deviation itself: u = s/√(2ν) (JCGM 100, E.4.3). */
export const ofSpread = ({ sd, dof }: Spread): Record<string, Record<string, Part>> =>
  dof < FEWEST
    ? {}
    : {
        repeatability: {
          repeatability: { u: sd / Math.sqrt(2 * dof), dof, pool: 'repeatability', shape: 't' },
        },
      }

/** Whether the scatter is too small to average out digits of this size. */
export const keepsDigits = (resolution: number, { sd, dof }: Spread): boolean =>
  resolution > 0 && !(dof >= FEWEST && sd >= resolution / 2)

/** Moves some rows of a column by so much times z. */
export const moveRows = (
  name: string,
  rows: readonly number[],
  by: number,
): ((columns: Columns, z: number) => Columns) => {
  const own = new Set(rows)
  return (columns, z) => {
    const column = columns[name]
    if (!column) return columns
    const values = column.values.map((value, row) => (own.has(row) ? value + z * by : value))
    return { ...columns, [name]: { ...column, values } }
  }
}

/** r/√12 for each group on its own: the mean of equal readings is no better than one of them. */
export const digitSources = (
  column: string,
  words: string,
  columns: Columns,
  groups: readonly Group[],
  spread: Spread,
): ExtraSource[] => {
  const resolution = columns[column]?.resolution ?? 0
  if (!keepsDigits(resolution, spread)) return []
  return groups.map(({ name, rows }) => {
    const move = moveRows(column, rows, resolution / Math.sqrt(12))
    return {
      source: `digits_of_${column}_${name}`,
      label: `resolution of ${words} at ${name.replaceAll('_', ' ')}`,
      shape: 'rectangular',
      perturb: (moved, givens, z) => ({ columns: move(moved, z), givens }),
    }
  })
}

/** What `Estimate.residual` says of a column whose digits are sources of their own: the engine adds none. */
export const digitsByGroup = (column: Column | undefined, { sd, dof }: Spread): number =>
  Math.max(column?.resolution ?? 0, dof >= FEWEST ? sd : 0)
