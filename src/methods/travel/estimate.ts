/** Readings and givens → angles, errors, margins, asymmetry, friction. */
import { lazily } from '../../quantity/lazily.ts'
import type { Part, Result } from '../../quantity/types.ts'
import type { Columns, Estimate, Givens, Selection } from '../method.ts'
import { digitsByGroup, scatterOfMeans } from '../repeats.ts'
import { type Cell, readingOf } from './cells.ts'
import { beyond, marginOf } from './positions.ts'
import { angleAt, type Choice, type Place, pairsOf } from './select.ts'

const COLUMNS = ['angle', 'offset', 'force'] as const

/** What cannot be had is not a number here, and left out by `estimate`. */
const valuesOf = (
  columns: Columns,
  givens: Givens,
  choice: Choice,
  move: (cell: Cell) => number = () => 0,
): Record<string, number> => {
  const angle = (place: Place) => angleAt(columns, givens, place, move)
  const error = (place: Place) => beyond(place.position, angle(place))
  const margin = (place: Place) => marginOf(place.position, error(place), place.end)
  const values: Record<string, number> = {}
  const put = (name: string, place: Place) => {
    values[name] = angle(place)
    values[`${name}_error`] = error(place)
    values[`${name}_margin`] = margin(place)
  }
  for (const [name, place] of Object.entries(choice.worse)) put(name, place)
  for (const place of choice.places) if (place.side !== '') put(`${place.position.name}_${place.side}`, place)
  for (const [left, right] of pairsOf(choice.places))
    if (left.side !== '') values[`${left.position.name}_asymmetry`] = error(left) - error(right)
  const { worst, uneven, neutral, friction } = choice
  if (worst) values.worst_margin = margin(worst)
  if (uneven) values.asymmetry = error(uneven[0]) - error(uneven[1])
  if (neutral) values.neutral_offset = readingOf(columns, givens, neutral, move(neutral))
  if (friction) {
    const [one, other] = friction.map((cell) => readingOf(columns, givens, cell, move(cell)))
    values.friction_force = ((one ?? Number.NaN) - (other ?? Number.NaN)) / 2
  }
  return values
}

export const estimate = (
  columns: Columns,
  givens: Givens,
  selection: Selection,
): Result<Estimate, string> => {
  const choice = selection as Choice
  if (choice.places.length === 0)
    return { ok: false, error: 'no row has a position of the card and an angle' }
  const values = Object.fromEntries(
    Object.entries(valuesOf(columns, givens, choice)).filter(([, value]) => Number.isFinite(value)),
  )
  const scatter = lazily(() => {
    const all: Record<string, Record<string, Part>> = {}
    for (const column of COLUMNS) {
      const own = choice.cells.filter((cell) => cell.column === column)
      const computed = (moves: Float64Array) =>
        valuesOf(columns, givens, choice, (cell) => moves[own.indexOf(cell)] ?? 0)
      const found = scatterOfMeans(computed, own, choice.spreads[column], `repeats of ${column}`)
      for (const [name, parts] of Object.entries(found)) all[name] = { ...all[name], ...parts }
    }
    return all
  })
  const residual = Object.fromEntries(
    COLUMNS.map((column) => [column, digitsByGroup(columns[column], choice.spreads[column])]),
  )
  return {
    ok: true,
    value: {
      values,
      get scatter() {
        return scatter()
      },
      residual,
    },
  }
}
