/** Whether the hold is one straight line: the slope of its second half less that of its first. */
import { abscissaOf, fitLine, straightOver } from '../quantity/fit.ts'

export type Halves = { readonly value: number; readonly u: number; readonly dof: number }

const slopeFrom = (x: Float64Array, y: Float64Array): number => straightOver(abscissaOf(x), y).slope

/** The value of `halvesOf` alone. */
export const changeOfSlope = (x: Float64Array, y: Float64Array): number | null => {
  const middle = Math.floor(x.length / 2)
  if (x.length < 5) return null
  return (
    slopeFrom(x.subarray(middle), y.subarray(middle)) -
    slopeFrom(x.subarray(0, middle), y.subarray(0, middle))
  )
}

/** Null where the points are fewer than five: then the two halves have no scatter of their own. */
export const halvesOf = (x: Float64Array, y: Float64Array): Halves | null => {
  const count = x.length
  const middle = Math.floor(count / 2)
  if (count < 5) return null
  const first = fitLine(x.subarray(0, middle), y.subarray(0, middle))
  const second = fitLine(x.subarray(middle), y.subarray(middle))
  const dof = first.dof + second.dof
  // One scatter for both: the residuals are pooled, each half weighs with its own spread of x.
  const squares = (fit: { residual: number; dof: number }) => (fit.dof > 0 ? fit.residual ** 2 * fit.dof : 0)
  const variance = (squares(first) + squares(second)) / dof
  const u = Math.sqrt(variance * (1 / first.sxx + 1 / second.sxx))
  return { value: second.slope - first.slope, u, dof }
}
