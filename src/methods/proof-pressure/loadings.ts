/** Loadings one after the other, and the steps in which each was raised. */
import type { Columns, Givens } from '../method.ts'
import { at, bandOf, mean, signOf, targetOf } from './readings.ts'

/** Rows at one level of pressure, read one after the other. */
export type Step = readonly number[]

export type Loading = {
  /** Rows with the structure unloaded, between the loading before and this one. */
  readonly before: readonly number[]
  readonly loaded: readonly number[]
}

/** Readings of the highest step that count, where the others have no more. */
const FIRST_OF_HOLD = 3

/** A step apart from the one before: more than this share of the target. */
const APART = 0.03

/** Loadings as numbered, else from one return to zero to the next; and the unloaded rows after the last. */
export const loadingsOf = (
  columns: Columns,
  givens: Givens,
): { readonly loadings: readonly Loading[]; readonly after: readonly number[] } => {
  const band = bandOf(columns, givens)
  const sign = signOf(givens)
  const loadings: { before: number[]; loaded: number[] }[] = []
  let unloaded: number[] = []
  let number = Number.NaN
  const rows = Array.from(columns.pressure?.values ?? [], (_, row) => row)
  for (const row of rows) {
    const pressure = sign * at(columns.pressure, row)
    if (Number.isNaN(pressure)) continue
    if (pressure <= band) {
      unloaded.push(row)
      continue
    }
    const numbered = at(columns.loading, row)
    const current = loadings.at(-1)
    const same = Number.isNaN(numbered) ? unloaded.length === 0 : numbered === number
    if (current && same) current.loaded.push(row)
    else loadings.push({ before: unloaded, loaded: [row] })
    unloaded = []
    number = numbered
  }
  return { loadings, after: unloaded }
}

/** Pressure by which readings of one level differ at most, Pa: 3 % of the target, or three digits. */
export const apartOf = (columns: Columns, givens: Givens): number =>
  Math.max(3 * (columns.pressure?.resolution ?? 0), APART * Math.abs(targetOf(givens)))

const median = (sizes: readonly number[]): number => [...sizes].sort((a, b) => a - b)[sizes.length >> 1] ?? 1

/**
 * Steps on the way up: readings one after the other that stay within 3 % of the target, or three digits, of the first
 * one. Of the highest step only the first few count: the skin creeps in the hold, and less so the second time.
 */
export const stepsOf = (columns: Columns, givens: Givens, { loaded }: Loading): readonly Step[] => {
  const sign = signOf(givens)
  const apart = apartOf(columns, givens)
  const pressure = (row: number) => sign * at(columns.pressure, row)
  const highest = loaded.reduce((most, row) => Math.max(most, pressure(row)), -Infinity)
  const steps: number[][] = []
  for (const row of loaded) {
    const first = steps.at(-1)?.[0]
    if (first === undefined || pressure(row) > pressure(first) + apart) steps.push([row])
    else if (pressure(row) >= pressure(first) - apart) steps.at(-1)?.push(row)
    else break
  }
  const top = steps.findIndex((step) => highest - mean(step.map(pressure)) <= apart)
  const up = top < 0 ? steps : steps.slice(0, top + 1)
  const counts = up.slice(0, -1).map((step) => step.length)
  return up.map((step, k) =>
    k === up.length - 1 ? step.slice(0, Math.max(FIRST_OF_HOLD, median(counts))) : step,
  )
}

/** Rows of a loading at its highest level: its hold. */
export const topOf = (columns: Columns, givens: Givens, { loaded }: Loading): readonly number[] => {
  const sign = signOf(givens)
  const highest = loaded.reduce((most, row) => Math.max(most, sign * at(columns.pressure, row)), -Infinity)
  return loaded.filter((row) => sign * at(columns.pressure, row) >= highest - apartOf(columns, givens))
}
