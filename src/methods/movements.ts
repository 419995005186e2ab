/**
 * Ways in which inputs move. Many sources move a column alike — an offset, a calibration and a digit all shift it —
 * so movements carry a key: the engine works out once a key how the measures follow.
 */
import type { Column, ColumnField, Columns, Givens } from './method.ts'

export type Inputs = { readonly columns: Columns; readonly givens: Givens }

/** Equal keys within one run mean the same movement. */
export type Movement = {
  readonly key: string
  /** The one column or given that it moves, in proportion to the amount; absent where it is not so simple. */
  readonly moves?: { readonly column: string } | { readonly given: string }
  /** The inputs moved by so much, in the movement's own unit. */
  readonly apply: (inputs: Inputs, amount: number) => Inputs
}

/** Adds to each row of a column the amount times what `by` says of the row and its value. */
export const movement = (
  name: string,
  how: string,
  by: (row: number, value: number) => number,
): Movement => ({
  key: `column:${name}/${how}`,
  moves: { column: name },
  apply: (inputs, amount) => {
    const column = inputs.columns[name]
    if (!column) return inputs
    const values = new Float64Array(column.values)
    for (let row = 0; row < values.length; row += 1) {
      const value = values[row] as number
      values[row] = value + amount * by(row, value)
    }
    return { ...inputs, columns: { ...inputs.columns, [name]: { ...column, values } } }
  },
})

export const moveGiven = (name: string): Movement => ({
  key: `given:${name}`,
  moves: { given: name },
  apply: (inputs, amount) => {
    const numbers = { ...inputs.givens.numbers }
    numbers[name] = (numbers[name] ?? Number.NaN) + amount
    return { ...inputs, givens: { ...inputs.givens, numbers } }
  },
})

/** −½ … +½ over the span of `along`; 0 everywhere where the span is empty. */
export const rampAlong = (along: ArrayLike<number>): ((row: number) => number) => {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (let row = 0; row < along.length; row += 1) {
    const x = along[row] as number
    if (x < low) low = x
    if (x > high) high = x
  }
  const span = high - low
  if (!(span > 0)) return () => 0
  const middle = (low + high) / 2
  return (row) => {
    const x = along[row] as number
    return Number.isNaN(x) ? 0 : (x - middle) / span
  }
}

export const timeOf = (columns: Columns): Float64Array | undefined => columns.time?.values

/** The ramp that a fit over this column could take for a slope: along the column itself, time, or the rows. */
export const alongColumn = (field: ColumnField, column: Column, columns: Columns): Movement | null => {
  if (field.ramp === 'none') return null
  const along =
    field.ramp === 'own'
      ? column.values
      : (timeOf(columns) ?? Float64Array.from(column.values, (_, row) => row))
  return movement(field.name, 'ramp', rampAlong(along))
}

/** +1 where the reading rises towards this row, −1 where it falls, as the last real movement was. */
export const directions = (values: Float64Array): Int8Array => {
  const direction = new Int8Array(values.length)
  let last: -1 | 0 | 1 = 0
  for (let row = 1; row < values.length; row += 1) {
    const step = (values[row] as number) - (values[row - 1] as number)
    if (step > 0) last = 1
    else if (step < 0) last = -1
    direction[row] = last
  }
  if (direction.length > 1) direction[0] = direction[1] as number
  return direction
}
