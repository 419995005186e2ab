/** Which rows each aggregate takes, chosen once from the readings as they are. */
import { evaluate } from '../../quantity/formula/index.ts'
import type { Dimension } from '../../quantity/types.ts'
import type { Column, Columns, Givens, Selection } from '../method.ts'
import { AGGREGATES, type Aggregate, isLabel } from './aggregates.ts'
import { dimensionsOf, type Plan, planOf } from './plan.ts'

/** The rows of one aggregate, in order, or why it cannot be had. */
export type Pick = {
  readonly aggregate: Aggregate
  readonly rows: Int32Array
  /** Rows that have a value in all of its columns. */
  readonly readings: number
  /** Rows that have no value in one of its columns. */
  readonly missing: number
  /** What is in doubt because of them; empty where it is only a reading less. */
  readonly doubt: string
  readonly refused: string
}

export type Choice = {
  readonly plan: Plan
  readonly picks: ReadonlyMap<string, Pick>
  /** Of the measures whose formulas fit together; the others have no value. */
  readonly dims: Readonly<Record<string, Dimension>>
  readonly misfits: ReadonlyMap<string, string>
}

export const asChoice = (selection: Selection): Choice => selection as Choice

const at = (values: ArrayLike<number>, row: number): number => values[row] ?? Number.NaN

/** Numbers keep their cells as texts too; a column of words has no values at all. */
const presence = (column: Column): ((row: number) => boolean) => {
  const { values, texts, missing } = column
  if (!texts || !values.every(Number.isNaN))
    return (row) => missing?.[row] !== 1 && !Number.isNaN(at(values, row))
  return (row) => missing?.[row] !== 1 && !['', '-'].includes(texts[row]?.trim() ?? '')
}

const rowsOf = (columns: readonly Column[]): { live: Int32Array; missing: number } => {
  const count = columns[0]?.values.length ?? 0
  const present = columns.map(presence)
  const live = new Int32Array(count)
  let found = 0
  for (let row = 0; row < count; row += 1) {
    if (present.every((each) => each(row))) live[found++] = row
  }
  return { live: live.slice(0, found), missing: count - found }
}

const extreme = (values: Float64Array, rows: Int32Array, sign: 1 | -1): number =>
  rows.reduce(
    (best, row) => (sign * at(values, row) > sign * at(values, best) ? row : best),
    rows[0] as number,
  )

/** Readings that x leaves on either side of the place; the same one twice where it lies exactly there. */
const crossings = (x: Float64Array, rows: Int32Array, place: number): (readonly [number, number])[] => {
  const found: (readonly [number, number])[] = []
  for (const [i, row] of rows.entries()) {
    const next = rows[i + 1]
    const here = at(x, row) - place
    const there = next === undefined ? Number.NaN : at(x, next) - place
    if (here === 0) found.push([row, row])
    else if (next !== undefined && here * there < 0) found.push([row, next])
  }
  return found
}

type Rows = Pick['rows'] | string

/** The row at the place and one beside it, so that the value follows where x or the place moves. */
const withNeighbour = (rows: Int32Array, row: number, x: Float64Array): Int32Array => {
  const index = rows.indexOf(row)
  const beside = [rows[index + 1], rows[index - 1]].find(
    (other) => other !== undefined && at(x, other) !== at(x, row),
  )
  return Int32Array.from(beside === undefined ? [row] : [row, beside])
}

const placed = (aggregate: Aggregate, columns: Columns, givens: Givens, live: Int32Array): Rows => {
  const x = aggregate.x && columns[aggregate.x.name]
  const { place, key } = aggregate
  if (!x || !aggregate.x || !place) return `${key} has no place to look at`
  if ('word' in place) {
    const rows = live.filter((row) => x.texts?.[row]?.trim() === place.word)
    return rows.length > 0 ? rows : `no reading of \`${aggregate.y.name}\` is marked ${place.word}`
  }
  const value = evaluate(place.node, givens.numbers)
  if (!value.ok) return value.error[0]?.message ?? 'the place has no value'
  if (isLabel(aggregate.x)) {
    const rows = live.filter((row) => at(x.values, row) === value.value)
    return rows.length > 0
      ? rows
      : `no reading of \`${aggregate.y.name}\` stands at ${aggregate.x.name} ${value.value}`
  }
  const found = crossings(x.values, live, value.value)
  const [only, second] = found
  if (!only)
    return `the readings of \`${aggregate.x.name}\` do not reach the place of ${key}; nothing is extrapolated`
  if (second)
    return `\`${aggregate.x.name}\` passes the place of ${key} ${found.length} times, so it is not clear which reading is meant`
  return only[0] === only[1] ? withNeighbour(live, only[0], x.values) : Int32Array.from(only)
}

const rises = (x: Float64Array, rows: Int32Array): boolean =>
  rows.every((row, i) => i === 0 || at(x, row) > at(x, rows[i - 1] as number))

const chosen = (aggregate: Aggregate, columns: Columns, givens: Givens, live: Int32Array): Rows => {
  const { name, y, x, key } = aggregate
  const values = (columns[y.name] as Column).values
  const { least } = AGGREGATES[name]
  if (live.length < least) {
    const there = live.length === 1 ? 'there is one' : `there are ${live.length}`
    return `${key} needs ${least === 1 ? 'a reading' : `${least} readings`}, and ${there}`
  }
  switch (name) {
    case 'max':
      return Int32Array.of(extreme(values, live, 1))
    case 'min':
      return Int32Array.of(extreme(values, live, -1))
    case 'first':
      return live.slice(0, 1)
    case 'last':
      return live.slice(-1)
    case 'range':
      // The other way round for the lowest: of readings that are all alike two different ones are taken.
      return Int32Array.of(extreme(values, live, 1), extreme(values, live.toReversed(), -1))
    case 'at':
      return placed(aggregate, columns, givens, live)
    case 'integral':
      if (x && !rises((columns[x.name] as Column).values, live))
        return `\`${x.name}\` does not rise from reading to reading, so ${key} has no area`
      return live
    default:
      return live
  }
}

/** A reading that is not there may have been the highest one, or the last. */
const doubtOf = ({ name, y, x }: Aggregate, rows: Int32Array, total: number, missing: number): string => {
  if (missing === 0) return ''
  if (['max', 'min', 'range'].includes(name))
    return `a value of \`${y.name}\` that was not read may lie beyond the others`
  if (name === 'integral') return `the area under \`${y.name}\` bridges readings that are not there`
  if (name === 'first' && rows[0] !== 0) return `the first row has no value of \`${y.name}\``
  if (name === 'last' && rows[0] !== total - 1) return `the last row has no value of \`${y.name}\``
  if (
    name === 'at' &&
    x &&
    !isLabel(x) &&
    rows.length === 2 &&
    Math.abs((rows[1] as number) - (rows[0] as number)) > 1
  )
    return `the readings of \`${y.name}\` on both sides of the place are not neighbours`
  return ''
}

const pickOf = (aggregate: Aggregate, columns: Columns, givens: Givens): Pick => {
  const names = [aggregate.y.name, ...(aggregate.x ? [aggregate.x.name] : [])]
  const none = { aggregate, rows: new Int32Array(0), readings: 0, missing: 0, doubt: '' }
  const absent = names.find((name) => !Object.hasOwn(columns, name))
  if (absent) return { ...none, refused: `the readings have no column \`${absent}\`` }
  const used = names.map((name) => columns[name] as Column)
  const { live, missing } = rowsOf(used)
  const rows = chosen(aggregate, columns, givens, live)
  if (typeof rows === 'string') return { ...none, readings: live.length, missing, refused: rows }
  const readings = live.length
  const doubt = doubtOf(aggregate, rows, readings + missing, missing)
  return { aggregate, rows, readings, missing, doubt, refused: '' }
}

export const select = (columns: Columns, givens: Givens): Choice => {
  const plan = planOf(givens.fields)
  const { dims, faults } = dimensionsOf(plan, givens.dims ?? {})
  return {
    plan,
    picks: new Map(plan.aggregates.map((each) => [each.key, pickOf(each, columns, givens)])),
    dims,
    misfits: new Map(faults.map(({ measure, fault }) => [measure.name, fault.message])),
  }
}

/** Two values of a column that has one reading are that reading: their difference would be exactly 0. */
export const sameReading = (measure: Plan['measures'][number], picks: Choice['picks']): string => {
  const lonely = measure.all.filter(({ key, name }) => name !== 'count' && picks.get(key)?.readings === 1)
  const twice = lonely.find((a) => lonely.some((b) => b.key !== a.key && b.y.name === a.y.name))
  return twice ? `\`${twice.y.name}\` has one reading, and two values of it are taken` : ''
}
