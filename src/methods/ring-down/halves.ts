/** Both halves of a decay, each fitted on its own: damping early and late. */
import type { Fit } from './least-squares.ts'
import { DRIFT, fitOscillation, OFFSET } from './oscillation.ts'

export type Halves = readonly [early: Fit | null, late: Fit | null]

/**
 * The fits of both halves, each with its own amplitude, less the offset and drift of the whole; `half` is the first
 * point of the second. They start from the whole, or from earlier fits of the same halves where these are given.
 */
export const halvesOf = (
  t: Float64Array,
  y: Float64Array,
  whole: Fit,
  half: number,
  starts: readonly (Float64Array | undefined)[] = [],
): Halves => {
  const [offset, drift] = [whole.parameters[OFFSET] as number, whole.parameters[DRIFT] as number]
  const swinging = y.map((value, i) => value - offset - drift * (t[i] as number))
  const start = whole.parameters.slice(0, OFFSET)
  const [early = start, late = start] = starts
  return [
    fitOscillation(t.subarray(0, half), swinging.subarray(0, half), early),
    fitOscillation(t.subarray(half), swinging.subarray(half), late),
  ]
}
