/** Which rows are repeats of what, and which side, position and end of a tolerance is the worst: chosen once. */
import type { Columns, Givens, Selection } from '../method.ts'
import { type Spread, spreadOf } from '../repeats.ts'
import { type Cell, cellsOf, readingOf, type Side } from './cells.ts'
import { beyond, marginOf, NEUTRAL, type Position, positionNamed, positionsOf } from './positions.ts'

/** One position on one side; `end`: the nearer end of its tolerance. */
export type Place = {
  readonly position: Position
  readonly side: Side
  readonly cell: Cell
  /** The cell at neutral that is subtracted. */
  readonly neutral: Cell | null
  readonly end: 'plus' | 'minus'
}

export type Choice = Selection & {
  /** Angles and offsets first, then forces. */
  readonly cells: readonly Cell[]
  readonly spreads: Readonly<Record<Cell['column'], Spread>>
  readonly places: readonly Place[]
  /** Position → the worse of its sides. */
  readonly worse: Readonly<Record<string, Place>>
  readonly worst: Place | null
  /** Left and right of the position where they differ most. */
  readonly uneven: readonly [Place, Place] | null
  readonly neutral: Cell | null
  /** Forces one way and the other through one place, where their difference is largest. */
  readonly friction: readonly [Cell, Cell] | null
}

export const angleAt = (
  columns: Columns,
  givens: Givens,
  { cell, neutral }: Pick<Place, 'cell' | 'neutral'>,
  move: (cell: Cell) => number = () => 0,
): number =>
  readingOf(columns, givens, cell, move(cell)) -
  (neutral ? readingOf(columns, givens, neutral, move(neutral)) : 0)

const most = <T>(all: readonly T[], size: (one: T) => number): T | null =>
  all.reduce<T | null>((best, one) => (best === null || size(one) > size(best) ? one : best), null)

/** Both sides of each position; of one surface, its positions left and right. */
export const pairsOf = (places: readonly Place[]): (readonly [Place, Place])[] => {
  const sided = places.flatMap((left) =>
    left.side !== 'left'
      ? []
      : places
          .filter((right) => right.side === 'right' && right.position === left.position)
          .map((right) => [left, right] as const),
  )
  const [left, right] = ['left', 'right'].map((name) =>
    places.find(({ position, side }) => side === '' && position.name === name),
  )
  return left && right ? [...sided, [left, right]] : sided
}

const frictionOf = (columns: Columns, givens: Givens, forces: readonly Cell[]): Choice['friction'] => {
  const isPositive = (cell: Cell) => readingOf(columns, givens, cell) > 0
  const pairs = forces
    .filter(isPositive)
    .flatMap((one) =>
      forces
        .filter((other) => !isPositive(other) && other.position === one.position && other.side === one.side)
        .map((other) => [one, other] as const),
    )
  return most(pairs, ([one, other]) => readingOf(columns, givens, one) - readingOf(columns, givens, other))
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const positions = positionsOf(givens.fields)
  const known = positions.map(({ name }) => name)
  const names = known.includes(NEUTRAL) ? known : [...known, NEUTRAL]
  const [angles, offsets, forces] = [
    cellsOf(columns, 'angle', names),
    cellsOf(columns, 'offset', names),
    cellsOf(columns, 'force', names),
  ]
  const read = [...angles, ...offsets]
  const isTaken = givens.words.counted_from === 'neutral'
  const value = (cell: Cell) => readingOf(columns, givens, cell)
  const places = read.flatMap((cell): Place[] => {
    const position = positionNamed(positions, cell.position)
    const neutral = isTaken
      ? (read.find(
          (one) => one.position === NEUTRAL && one.side === cell.side && one.column === cell.column,
        ) ?? null)
      : null
    if (!position || (isTaken && (neutral === null || position.name === NEUTRAL))) return []
    const error = beyond(position, angleAt(columns, givens, { cell, neutral }))
    const end = marginOf(position, error, 'plus') <= marginOf(position, error, 'minus') ? 'plus' : 'minus'
    return [{ position, side: cell.side, cell, neutral, end }]
  })
  const error = (place: Place) => beyond(place.position, angleAt(columns, givens, place))
  const margin = (place: Place) => marginOf(place.position, error(place), place.end)
  const badness = (place: Place) => (Number.isNaN(margin(place)) ? Math.abs(error(place)) : -margin(place))
  const worse = names.flatMap((name) => {
    const place = most(
      places.filter(({ position }) => position.name === name),
      badness,
    )
    return place ? [[name, place] as const] : []
  })
  const spread = (cells: readonly Cell[], column: Cell['column']) =>
    spreadOf((row) => columns[column]?.values[row] ?? Number.NaN, cells)
  return {
    cells: [...read, ...forces],
    spreads: {
      angle: spread(angles, 'angle'),
      offset: spread(offsets, 'offset'),
      force: spread(forces, 'force'),
    },
    places,
    worse: Object.fromEntries(worse),
    worst: most(
      places.filter((place) => !Number.isNaN(margin(place))),
      badness,
    ),
    uneven: most(pairsOf(places), ([left, right]) => Math.abs(error(left) - error(right))),
    neutral: most(
      read.filter(({ position }) => position === NEUTRAL),
      (cell) => Math.abs(value(cell)),
    ),
    friction: frictionOf(columns, givens, forces),
  }
}
