/**
 * What is chosen once from the readings and then held fixed: the branches, the points that lie on the elastic line,
 * the readings on either side of the limit load. Perturbed readings never move a point from one branch to another.
 */
import { median } from '../../quantity/statistics.ts'
import { FAST_ROWS } from '../blocks.ts'
import type { Columns, Givens, Selection } from '../method.ts'
import { atLimit } from './at-limit.ts'
import { cyclesOf, type Piece, piecesOf, REVERSAL_DIGITS } from './branches.ts'
import { extentOf } from './extent.ts'
import { bendOf, type Leg, linesOf } from './fits.ts'
import { type Motion, motionOf } from './motion.ts'
import { elasticLegs, type Start } from './sticking.ts'

/** Two readings of one loading, the first below the limit load and the second at or above it. */
export type Crossing = { readonly side: 1 | -1; readonly below: number; readonly above: number }

export type Choice = {
  readonly legs: readonly Leg[]
  /** Rows left out of the lines: no load, play not taken up, or the circuit stuck. */
  readonly leftOut: readonly number[]
  readonly crossings: readonly Crossing[]
  /** Row of the greatest load each way. */
  readonly peaks: { readonly positive: number | null; readonly negative: number | null }
  /** The direction that moved further under the limit load. */
  readonly worst: 1 | -1
  /** The direction whose curve is bent more. */
  readonly bent: 1 | -1
  /** Load at which loading and unloading are compared, by side: the middle of what both cover. */
  readonly middle: { readonly positive: number | null; readonly negative: number | null }
  readonly fast: boolean
  readonly rows: number
}

const EMPTY: Choice = {
  legs: [],
  leftOut: [],
  crossings: [],
  peaks: { positive: null, negative: null },
  worst: 1,
  bent: 1,
  middle: { positive: null, negative: null },
  fast: false,
  rows: 0,
}

export const select = (columns: Columns, givens: Givens): Selection => {
  const motion = motionOf(columns, givens)
  return { choice: motion ? choose(columns, motion) : EMPTY }
}

const isChoice = (value: unknown): value is Choice =>
  typeof value === 'object' && value !== null && 'legs' in value

export const choiceOf = (selection: Selection): Choice =>
  isChoice(selection.choice) ? selection.choice : EMPTY

/** Rows at which every column that enters a fit has a reading. */
const completeRows = (motion: Motion): number[] =>
  Array.from(motion.load.keys()).filter(
    (row) =>
      Number.isFinite(motion.load[row]) &&
      Number.isFinite(motion.deflection[row]) &&
      motion.nodes.every((node) => Number.isFinite(node.motion[row])),
  )

const choose = (columns: Columns, motion: Motion): Choice => {
  const { load } = motion
  const rows = completeRows(motion)
  const fast = rows.length > FAST_ROWS
  const digit = (columns.load?.resolution ?? 0) * motion.loadPerRead
  const pieces = piecesOf(columns, load, rows, reversalOf(load, rows, digit, fast))
  const cycles = cyclesOf(pieces, load, columns.cycle)
  const starts = pieces.map(
    (piece, i): Start => ({ ...piece, key: keyOf(pieces, i), cycle: cycles[i] as number }),
  )
  const legs = elasticLegs(starts, motion, digit, fast)
  const used = new Set(legs.flatMap((leg) => leg.points.flat()))
  const crossings = pieces.flatMap((piece) => crossingOf(piece, load, motion.limit))
  return {
    legs,
    leftOut: rows.filter((row) => !used.has(row)),
    crossings,
    peaks: { positive: peakRow(load, pieces, 1), negative: peakRow(load, pieces, -1) },
    worst: worstSide(crossings, motion),
    bent: bentSide(legs, motion),
    middle: { positive: middleOf(legs, load, 1), negative: middleOf(legs, load, -1) },
    fast,
    rows: rows.length,
  }
}

/**
 * A change of the load by more than this is a reversal: three digits; in a long log more than its noise ever makes.
 * The noise is taken from second differences, which an even ramp does not have (their variance is 6σ²).
 */
const reversalOf = (load: Float64Array, rows: readonly number[], digit: number, fast: boolean): number => {
  const digits = REVERSAL_DIGITS * digit
  if (!fast) return digits
  const at = (i: number) => load[rows[i] as number] as number
  const every = Math.ceil(rows.length / 10_000)
  const bends: number[] = []
  for (let i = 1; i < rows.length - 1; i += every) bends.push(Math.abs(at(i + 1) - 2 * at(i) + at(i - 1)))
  // The median of a normal's size is 0.6745 of its standard deviation; a million values span about 10 of them.
  return Math.max(digits, (12 * median(bends)) / (0.6745 * Math.sqrt(6)))
}

const keyOf = (pieces: readonly Piece[], index: number): string => {
  const { side, phase } = pieces[index] as Piece
  const count = pieces
    .slice(0, index + 1)
    .filter((piece) => piece.side === side && piece.phase === phase).length
  return `${side > 0 ? 'positive' : 'negative'}-${phase}-${count}`
}

/** A float's tail below the limit load still is the limit load. */
const reaches = (load: number, limit: number): boolean => load >= limit * (1 - 1e-12)

const crossingOf = ({ side, phase, rows }: Piece, load: Float64Array, limit: number): Crossing[] => {
  if (phase !== 'loading') return []
  const at = (row: number | undefined) => (row === undefined ? Number.NaN : (load[row] as number) * side)
  const next = rows.findIndex((row) => reaches(at(row), limit))
  const above = rows[next]
  if (above === undefined) return []
  const below = rows[next - 1]
  if (below !== undefined) return [{ side, below, above }]
  return Math.abs(at(above) - limit) <= 1e-12 * limit ? [{ side, below: above, above }] : []
}

/** Where one loading has so many rows that the greatest of them may be a spike, the fifth greatest counts. */
const peakRow = (load: Float64Array, pieces: readonly Piece[], side: 1 | -1): number | null => {
  const own = pieces.filter((piece) => piece.side === side && piece.phase === 'loading')
  const count = own.some((piece) => piece.rows.length > FAST_ROWS) ? 5 : 1
  const size = (row: number | undefined) => (row === undefined ? 0 : (load[row] as number) * side)
  const greatest: number[] = []
  for (const { rows } of own)
    for (const row of rows) {
      if (greatest.length === count && size(row) <= size(greatest[count - 1])) continue
      greatest.push(row)
      greatest.sort((a, b) => size(b) - size(a)).splice(count)
    }
  return greatest[greatest.length - 1] ?? null
}

const worstSide = (crossings: readonly Crossing[], motion: Motion): 1 | -1 => {
  const moved = (side: 1 | -1) => atLimit(motion, motion.travelled, crossings, side)?.value ?? 0
  return moved(-1) > moved(1) ? -1 : 1
}

const bentSide = (legs: readonly Leg[], motion: Motion): 1 | -1 => {
  const lines = linesOf(legs, motion.load, motion.deflection)
  const bend = (side: 1 | -1) =>
    Math.abs(
      bendOf(
        lines.filter((line) => line.side === side),
        side,
      )?.fitted.value ?? 0,
    )
  return bend(-1) > bend(1) ? -1 : 1
}

const middleOf = (legs: readonly Leg[], load: Float64Array, side: 1 | -1): number | null => {
  const span = (phase: 'loading' | 'unloading') => {
    const own = legs
      .filter((leg) => leg.side === side && leg.phase === phase)
      .flatMap((leg) => leg.points.flat())
    const loads = own.map((row) => load[row] as number)
    return loads.length === 0 ? null : extentOf(loads)
  }
  const loading = span('loading')
  const unloading = span('unloading')
  if (!loading || !unloading) return null
  return (Math.max(loading.low, unloading.low) + Math.min(loading.high, unloading.high)) / 2
}
