/**
 * Tells the branches of a loading test apart, in the order of the rows (which is never changed: the same points in
 * another order are another loading history, with other friction).
 */
import type { Column, Columns } from '../method.ts'
import { extentOf } from './extent.ts'

/** Rows over which the load runs one way; the turning point at which it began belongs to it as well. */
export type Branch = {
  readonly direction: 1 | -1
  readonly rows: readonly number[]
  /** Row at which the load turned: there the circuit begins to stick. */
  readonly turn: number
}

export type Phase = 'loading' | 'unloading'

/** A branch on one side of zero load. */
export type Piece = {
  readonly side: 1 | -1
  readonly phase: Phase
  readonly rows: readonly number[]
  readonly turn: number
}

/** Only a reversal of more than three digits of the load is one; smaller ones keep the branch. */
export const REVERSAL_DIGITS = 3

/** Splits the rows where the load turns by more than `reversal`. */
export const branchesOf = (load: Float64Array, rows: readonly number[], reversal: number): Branch[] => {
  const branches: Branch[] = []
  const at = (row: number) => load[row] as number
  const [first] = rows
  if (first === undefined) return branches
  let direction: 1 | -1 | 0 = 0
  let turn = first
  let start = 0
  // Position, among the rows, of the furthest load of the branch so far.
  let furthest = 0
  for (let position = 1; position < rows.length; position += 1) {
    const step = at(rows[position] as number) - at(rows[furthest] as number)
    if (direction === 0) {
      if (Math.abs(step) > reversal) {
        direction = step > 0 ? 1 : -1
        furthest = position
      }
    } else if (step * direction >= 0) furthest = position
    else if (Math.abs(step) > reversal) {
      branches.push({ direction, rows: rows.slice(start, furthest + 1), turn })
      turn = rows[furthest] as number
      start = furthest
      direction = direction === 1 ? -1 : 1
      furthest = position
    }
  }
  if (direction !== 0) branches.push({ direction, rows: rows.slice(start), turn })
  return branches
}

const sideRows = (load: Float64Array, rows: readonly number[], side: 1 | -1): number[] =>
  rows.filter((row) => (load[row] as number) * side > 0)

const piecesByLoad = (load: Float64Array, rows: readonly number[], reversal: number): Piece[] =>
  branchesOf(load, rows, reversal).flatMap(({ direction, rows: own, turn }) =>
    // In the order in which the branch runs through them.
    ([-direction, direction] as (1 | -1)[]).map((side): Piece => {
      const phase = side === direction ? 'loading' : 'unloading'
      return { side, phase, rows: sideRows(load, own, side), turn }
    }),
  )

const phaseOf = (word: string): Phase | null =>
  word.endsWith('unloading') ? 'unloading' : word.endsWith('loading') ? 'loading' : null

/** Pieces as the column `branch` names them; a cell without a word takes its row out of the fits. */
const piecesByWord = (load: Float64Array, rows: readonly number[], words: readonly string[]): Piece[] => {
  const pieces: { side: 1 | -1; phase: Phase; rows: number[]; turn: number }[] = []
  let previous = rows[0] ?? 0
  for (const row of rows) {
    const phase = phaseOf(words[row] ?? '')
    const value = load[row] as number
    if (phase !== null && value !== 0) {
      const side = value > 0 ? 1 : -1
      const last = pieces[pieces.length - 1]
      if (last && last.side === side && last.phase === phase) last.rows.push(row)
      else {
        // Unloading on one side and loading on the other run the same way: the load did not turn in between.
        const goesOn =
          last !== undefined && last.side === -side && last.phase === 'unloading' && phase === 'loading'
        pieces.push({ side, phase, rows: [row], turn: goesOn ? last.turn : previous })
      }
    }
    previous = row
  }
  return pieces
}

export const piecesOf = (
  columns: Columns,
  load: Float64Array,
  rows: readonly number[],
  reversal: number,
): Piece[] => {
  const words = columns.branch?.texts
  const pieces = words ? piecesByWord(load, rows, words) : piecesByLoad(load, rows, reversal)
  return pieces.filter((piece) => piece.rows.length > 0)
}

/** A part of a branch over less of the load of its side says little, and noise or a zero that is off may have made it. */
export const SHORTEST = 0.2

/** Cycle of each piece: as the column says at its last row, else the how-manieth of its kind it is; stubs do not count. */
export const cyclesOf = (
  pieces: readonly Piece[],
  load: Float64Array,
  column: Column | undefined,
): number[] => {
  const spans = pieces.map(({ rows, side }) => extentOf(rows.map((row) => (load[row] as number) * side)))
  const most = (side: 1 | -1) =>
    extentOf(spans.flatMap(({ high }, i) => (pieces[i]?.side === side ? [high] : []))).high
  const least = { '1': SHORTEST * most(1), '-1': SHORTEST * most(-1) }
  const counts = new Map<string, number>()
  return pieces.map(({ side, phase, rows }, i) => {
    const { low, high } = spans[i] ?? { low: 0, high: 0 }
    const before = counts.get(`${side}${phase}`) ?? 0
    const count = high - low >= least[`${side}`] ? before + 1 : before
    counts.set(`${side}${phase}`, count)
    const written = column?.values[rows[rows.length - 1] as number]
    return written !== undefined && Number.isFinite(written) ? written : Math.max(1, count)
  })
}
