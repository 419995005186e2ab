/** Which rows are fitted and how they are cut: chosen once from the readings as they are and held fixed. */

import type { Columns, Givens, Selection } from '../method.ts'
import { rangeOf } from './band.ts'
import { blocksOf, clearBlocks, noiseNear } from './blocks.ts'
import { halvesOf } from './halves.ts'
import { OMEGA } from './oscillation.ts'
import { findWindow, firstAt } from './window.ts'

/** More blocks than this see no slower wandering, and fewer turns than one a block none at all. */
const MOST_BLOCKS = 20

export type Decay = {
  /** Rows of the free decay with time and signal, in order. */
  readonly rows: Int32Array
  /** Where the fit starts from. */
  readonly start: Float64Array
  /** Number of turns in the window. */
  readonly turns: number
  /** First point of the second half. */
  readonly half: number
  /** Where the fits of both halves start from; undefined where the whole is the better start. */
  readonly halves: readonly (Float64Array | undefined)[]
  /** First point of each block, and their number at the end; about one turn or more each. */
  readonly blocks: Int32Array
  /** How many of these stand out of the noise. */
  readonly clear: number
  /** Rows left out because time or signal is missing. */
  readonly skipped: number
  /** Why nothing can be fitted. */
  readonly refused?: string
}

/** `select` makes every selection of this method, so it has this form. */
export const asDecay = (selection: Selection): Decay => selection as Decay

const refuse = (refused: string, skipped: number): Decay => ({
  rows: new Int32Array(0),
  start: new Float64Array(6),
  turns: 0,
  half: 0,
  halves: [],
  blocks: Int32Array.of(0),
  clear: 0,
  skipped,
  refused,
})

/** Times from the first row on, and the signal, of these rows. */
export const pointsOf = (columns: Columns, rows: Int32Array): { t: Float64Array; y: Float64Array } => {
  const time = columns.time?.values ?? new Float64Array(0)
  const signal = columns.signal?.values ?? new Float64Array(0)
  const origin = time[rows[0] ?? 0] as number
  return {
    t: Float64Array.from(rows, (row) => (time[row] as number) - origin),
    y: Float64Array.from(rows, (row) => signal[row] as number),
  }
}

const completeRows = (columns: Columns): Int32Array => {
  const { time, signal } = columns
  if (!time || !signal) return new Int32Array(0)
  const rows = new Int32Array(time.values.length)
  let count = 0
  let last = Number.NEGATIVE_INFINITY
  for (let row = 0; row < rows.length; row += 1) {
    const t = time.values[row] as number
    if (!Number.isFinite(t) || !Number.isFinite(signal.values[row]) || signal.missing?.[row] === 1) continue
    // A clock that stands still or goes back is a fault that `validate` names; such rows cannot be fitted.
    if (t <= last) continue
    last = t
    rows[count] = row
    count += 1
  }
  return rows.slice(0, count)
}

export const select = (columns: Columns, givens: Givens): Selection => {
  const rows = completeRows(columns)
  const skipped = (columns.time?.values.length ?? 0) - rows.length
  if (rows.length < 16)
    return refuse('Fewer than 16 rows have a time and a signal: too few for a ring-down.', skipped)
  const { t, y } = pointsOf(columns, rows)
  if (y.every((value) => value === y[0])) return refuse('The signal does not move: nothing rings.', skipped)
  const found = findWindow(t, y, givens.numbers.settle ?? 0, rangeOf(givens))
  if (!found)
    return refuse(
      'No damped oscillation can be fitted to the signal: noise, two modes alike, or friction.',
      skipped,
    )
  const { from, to, fit } = found
  const start = fit.parameters
  const window = t.slice(from, to).map((time) => time - (t[from] as number))
  const duration = window[window.length - 1] as number
  const turns = (duration * (start[OMEGA] as number)) / (2 * Math.PI)
  const count = Math.max(1, Math.min(MOST_BLOCKS, Math.floor(turns)))
  const starts = Int32Array.from({ length: count + 1 }, (_, k) =>
    k === count ? window.length : firstAt(window, (k * duration) / count),
  )
  const signal = y.slice(from, to)
  const half = firstAt(window, duration / 2)
  const blocks = blocksOf(window, signal, fit, starts)
  const noise = noiseNear(blocks, columns.signal?.resolution ?? 0)
  const decay: Decay = {
    rows: rows.slice(from, to),
    start,
    turns,
    half,
    halves: halvesOf(window, signal, fit, half).map((own) => own?.parameters),
    blocks: starts,
    clear: noise ? clearBlocks(blocks, noise.s) : 0,
    skipped,
  }
  return decay
}
