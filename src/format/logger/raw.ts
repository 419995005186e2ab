/** A column of a file before anything is known of its name, unit or scale; and what these make of it. */
import type { ColumnPlan } from './plan.ts'

export type RawColumn = {
  /** Numbers as written, times in seconds; NaN where there is no value. */
  readonly values: Float64Array
  readonly missing: Uint8Array
  /** Size of the last digit: a power of ten of what is written, of times in seconds; 0 where nothing is read. */
  readonly digit: number
}

/** The SI value of what is written. */
export const inSI = (value: number, plan: ColumnPlan): number =>
  plan.kind === 'number' ? plan.toSI(value * plan.scale) + plan.offset : value

/** Values in SI, and the size of their last digit. */
export type ColumnInSI = { readonly values: Float64Array; readonly digit: number }

/** The raw column stays as it is: it may be read again in another unit. */
export function columnInSI({ values, digit }: RawColumn, plan: ColumnPlan): ColumnInSI {
  if (plan.kind !== 'number') return { values, digit }
  const read = new Float64Array(values.length)
  for (let row = 0; row < read.length; row++) read[row] = inSI(values[row] as number, plan)
  return { values: read, digit: digit * plan.digit }
}

/** A time may not go back. */
export const isRising = (plan: ColumnPlan): boolean =>
  plan.kind === 'time' || (plan.kind === 'number' && plan.name === 'time')

/** The first row that is below one above it, −1 where there is none; rows without a value are passed over. */
export function firstFall(values: Float64Array): number {
  let last = Number.NEGATIVE_INFINITY
  for (let row = 0; row < values.length; row++) {
    const value = values[row] as number
    if (value < last) return row
    if (!Number.isNaN(value)) last = value
  }
  return -1
}
