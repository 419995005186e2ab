/**
 * Which points lie on the elastic line. After each turn of the load the circuit sticks until the load has changed by
 * twice the friction; below the friction load, and inside the play, it has not taken up yet. Such points are left out,
 * and since friction and play come from the lines themselves, this is repeated until nothing changes.
 */
import { type Piece, SHORTEST } from './branches.ts'
import { extentOf } from './extent.ts'
import { type Leg, type Line, linesOf, sharedSlope } from './fits.ts'
import type { Motion } from './motion.ts'

export type Start = Piece & { readonly key: string; readonly cycle: number }

const MOST_ROUNDS = 30
const MOST_ROWS = 4000
/** A leg is cut into this many blocks where it was logged fast. */
const BLOCKS = 8

type State = { readonly friction: number; readonly edges: Readonly<Record<'1' | '-1', number | null>> }

export const elasticLegs = (
  starts: readonly Start[],
  motion: Motion,
  digit: number,
  fast: boolean,
): Leg[] => {
  // Friction and play are found on some of the rows of a long log; then every row is asked.
  const total = starts.reduce((sum, { rows }) => sum + rows.length, 0)
  const every = Math.ceil(total / MOST_ROWS)
  const thin = starts.map((start) => ({ ...start, rows: start.rows.filter((_, i) => i % every === 0) }))
  const elastic = (of: readonly Start[], state: State) =>
    of.map((start) => start.rows.filter((row) => isElastic(row, start, motion, state, digit)))
  const stateFrom = (rows: readonly (readonly number[])[]) =>
    stateOf(linesOf(legsOf(thin, rows, motion.load, false), motion.load, motion.deflection))

  let rows: readonly (readonly number[])[] = thin.map((start) => farFromSticking(start, motion.load))
  let state = stateFrom(rows)
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const next = elastic(thin, state)
    const same = next.every(
      (own, i) => own.length === rows[i]?.length && own.every((row, k) => row === rows[i]?.[k]),
    )
    if (same) break
    rows = next
    state = stateFrom(rows)
  }
  return legsOf(starts, elastic(starts, state), motion.load, fast)
}

/** A first guess: the upper half of a loading and the lower half of an unloading, where there are points enough. */
const farFromSticking = ({ rows, phase }: Start, load: Float64Array): readonly number[] => {
  const size = (row: number) => Math.abs(load[row] as number)
  const half = extentOf(rows.map(size)).high / 2
  const kept = rows.filter((row) => (phase === 'loading' ? size(row) >= half : size(row) <= half))
  return kept.length >= 2 ? kept : rows
}

const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length

const atZero = (line: Line): number => (line.meanMotion - line.slope * line.meanLoad) * line.side

/** Friction (as a load) and the edge of the play on each side, as far as the lines give them. */
const stateOf = (lines: readonly Line[]): State => {
  const of = (side: 1 | -1, phase: 'loading' | 'unloading') =>
    lines.filter((line) => line.side === side && line.phase === phase)
  const widths: number[] = []
  const edges: Record<'1' | '-1', number | null> = { '1': null, '-1': null }
  for (const side of [1, -1] as const) {
    const loading = of(side, 'loading')
    const unloading = of(side, 'unloading')
    if (loading.length === 0 || unloading.length === 0) continue
    const middle = meanOf([...loading, ...unloading].map((line) => line.meanLoad)) as number
    const at = (line: Line) => (line.meanMotion + line.slope * (middle - line.meanLoad)) * side
    widths.push((meanOf(unloading.map(at)) as number) - (meanOf(loading.map(at)) as number))
    edges[`${side}`] =
      ((meanOf(loading.map(atZero)) as number) + (meanOf(unloading.map(atZero)) as number)) / 2
  }
  const compliance = lines.length > 0 ? sharedSlope(lines).value : 0
  const width = meanOf(widths)
  return { friction: width !== null && compliance > 0 ? Math.max(0, width / 2 / compliance) : 0, edges }
}

const isElastic = (
  row: number,
  start: Start,
  motion: Motion,
  { friction, edges }: State,
  digit: number,
): boolean => {
  const load = motion.load[row] as number
  const sinceTurn = Math.abs(load - (motion.load[start.turn] as number))
  // A point exactly at the end of the sticking is on the line already.
  if (sinceTurn < 2 * friction * (1 - 1e-9)) return false
  if (start.phase === 'unloading') return true
  // Where friction is too small to be seen, a digit of the load still is.
  if (Math.abs(load) <= friction + (friction > 0 ? digit : 0)) return false
  const edge = edges[`${start.side}`]
  return edge === null || (motion.deflection[row] as number) * start.side > edge
}

/** Legs that cover at least a fifth of the load of their side. */
const legsOf = (
  starts: readonly Start[],
  rows: readonly (readonly number[])[],
  load: Float64Array,
  fast: boolean,
): Leg[] => {
  const extents = rows.map((own) => extentOf(own.map((row) => load[row] as number)))
  const greatest = (side: 1 | -1) =>
    extentOf(
      starts
        .flatMap((start) => (start.side === side ? start.rows : []))
        .map((row) => (load[row] as number) * side),
    ).high
  const most = { '1': greatest(1), '-1': greatest(-1) }
  return starts.flatMap((start, i): Leg[] => {
    const own = rows[i] ?? []
    const { low, high } = extents[i] ?? { low: 0, high: 0 }
    if (!(high > low && high - low >= SHORTEST * most[`${start.side}`])) return []
    const { key, side, phase, cycle } = start
    return [{ key, side, phase, cycle, points: fast ? blocks(own) : own.map((row) => [row]) }]
  })
}

/** Blocks of equal count in the order of the rows; short legs keep their rows. */
const blocks = (rows: readonly number[]): number[][] => {
  const count = Math.min(BLOCKS, rows.length)
  const bound = (i: number) => Math.round((i * rows.length) / count)
  return Array.from({ length: count }, (_, i) => rows.slice(bound(i), bound(i + 1)))
}
