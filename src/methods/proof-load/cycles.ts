/**
 * Two loadings of the same article, before and after: the slope of movement over load in each, and the middle of the
 * play. Only readings with the load rising count, from 40 % of the peak upward: below, the system may still stand in
 * its play or stick by friction, and after a reversal it sticks again. In a system with play g and friction f the
 * rising readings lie on x = m + (F − f)/k + g/2 one way and x = m + (F + f)/k − g/2 the other, so that f and g
 * cancel in the mean of the two intercepts, which is the middle m.
 */
import type { Columns, Givens } from '../method.ts'
import { at, bandOf, liveRows, meanOver, phaseOf, signOf } from './readings.ts'

/** Rows of one direction of load. */
export type Group = { readonly side: 1 | -1; readonly rows: readonly number[] }
export type Cycles = { readonly before: readonly Group[]; readonly after: readonly Group[] }

const FROM = 0.4
const SIDES = [1, -1] as const

/** Rows in which the load rises away from zero, in the order they were read; a step within the digits changes nothing. */
const risingRows = (columns: Columns, rows: readonly number[]): number[] => {
  const digits = 3 * (columns.load?.resolution ?? 0)
  let rising = true
  return rows.filter((row, i) => {
    const load = at(columns.load, row)
    const previous = i === 0 ? 0 : at(columns.load, rows[i - 1] as number)
    const step = Math.sign(load) * (load - previous)
    if (Math.abs(step) > digits) rising = step > 0
    return rising
  })
}

/** Loadings one after the other: from an unloaded row to the next. */
const excursions = (columns: Columns, givens: Givens, rows: readonly number[]): number[][] => {
  const band = bandOf(columns, givens)
  const sign = signOf(givens)
  const found: number[][] = []
  let inside = false
  for (const row of rows) {
    const loaded = sign * at(columns.load, row) > band
    if (loaded && !inside) found.push([])
    if (loaded) found[found.length - 1]?.push(row)
    inside = loaded
  }
  return found
}

/** Rows of the loading before and of the one after: as `phase` says, else the first and the last of several. */
const loadings = (columns: Columns, givens: Givens): readonly [number[], number[]] | null => {
  const live = liveRows(columns, givens)
  const named = (phase: string) => live.filter((row) => phaseOf(columns, row) === phase)
  const band = bandOf(columns, givens)
  const marked = [named('before'), named('after')] as const
  const isLoaded = (row: number) => Math.abs(at(columns.load, row)) > band
  if (marked.every((rows) => rows.some(isLoaded))) return marked
  const found = excursions(columns, givens, live)
  const [first, last] = [found[0], found[found.length - 1]]
  return first && last && found.length > 1 ? [first, last] : null
}

/** Both cycles over the same range of load on each side; null where fewer than two loadings were read. */
export const cyclesOf = (columns: Columns, givens: Givens, channel: string): Cycles | null => {
  const both = loadings(columns, givens)
  if (!both) return null
  const load = (row: number) => at(columns.load, row)
  const rising = both.map((rows) =>
    risingRows(columns, rows).filter((row) => !Number.isNaN(at(columns[channel], row))),
  )
  const digits = 3 * (columns.load?.resolution ?? 0)
  const groups: { before: Group[]; after: Group[] } = { before: [], after: [] }
  for (const side of SIDES) {
    const peaks = rising.map((rows) => Math.max(0, ...rows.map((row) => side * load(row))))
    const peak = Math.min(...peaks)
    if (!(peak > digits)) continue
    const inRange = (row: number) => side * load(row) >= FROM * peak && side * load(row) <= peak + digits
    const [before = [], after = []] = rising.map((rows) => rows.filter(inRange))
    if (before.length < 2 || after.length < 2) continue
    groups.before.push({ side, rows: before })
    groups.after.push({ side, rows: after })
  }
  return groups.before.length > 0 ? groups : null
}

/** One straight slope through all groups, each with its own intercept: least squares of movement on load. */
export type CycleFit = {
  readonly slope: number
  /** Σ(F − F̄)² within the groups. */
  readonly spread: number
  /** Mean of the intercepts of both sides; NaN where only one side was loaded. */
  readonly middle: number
  /** How the scatter s of readings enters the middle: s·fromMeans and, through the slope, s·fromSlope. */
  readonly fromMeans: number
  readonly fromSlope: number
  readonly squares: number
  readonly dof: number
}

type Means = { readonly side: 1 | -1; readonly x: number; readonly y: number; readonly n: number }

export const fitCycle = (groups: readonly Group[], load: Float64Array, movement: Float64Array): CycleFit => {
  const means: Means[] = groups.map(({ side, rows }) => ({
    side,
    x: meanOver(load, rows),
    y: meanOver(movement, rows),
    n: rows.length,
  }))
  const sums = { xx: 0, xy: 0, yy: 0, n: 0 }
  groups.forEach(({ rows }, i) => {
    const { x, y } = means[i] as Means
    for (const row of rows) {
      const [dx, dy] = [(load[row] as number) - x, (movement[row] as number) - y]
      sums.xx += dx * dx
      sums.xy += dx * dy
      sums.yy += dy * dy
      sums.n += 1
    }
  })
  const slope = sums.xy / sums.xx
  const both = SIDES.every((side) => means.some((one) => one.side === side))
  const part = 1 / means.length
  const centre = means.reduce((sum, { x }) => sum + part * x, 0)
  return {
    slope,
    spread: sums.xx,
    middle: both ? means.reduce((sum, { x, y }) => sum + part * (y - slope * x), 0) : Number.NaN,
    fromMeans: Math.sqrt(means.reduce((sum, { n }) => sum + (part * part) / n, 0)),
    fromSlope: -centre / Math.sqrt(sums.xx),
    squares: Math.max(0, sums.yy - slope * sums.xy),
    dof: sums.n - groups.length - 1,
  }
}
