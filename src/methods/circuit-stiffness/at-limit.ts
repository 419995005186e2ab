/** What was measured under the limit load: between readings, never beyond them. */
import type { Fitted, Scatter } from './fits.ts'
import { inverse, kindsOf, type Put, times } from './found.ts'
import type { Motion } from './motion.ts'
import type { Choice, Crossing } from './select.ts'

/** `single` is the scatter of one reading of the motion. The direction that moved further counts. */
export const limitMeasures = (motion: Motion, choice: Choice, single: Scatter, put: Put): void => {
  const kinds = kindsOf(motion.form)
  const { positive, negative } = choice.peaks
  const reached = (row: number, side: 1 | -1): Fitted => ({
    value: (motion.load[row] as number) * side,
    parts: () => ({}),
  })
  if (positive !== null) put('reached_positive', reached(positive, 1), single, 'limit', kinds.load)
  if (negative !== null) put('reached_negative', reached(negative, -1), single, 'limit', kinds.load)

  const otherSide = choice.worst === 1 ? -1 : 1
  const moved = atLimit(motion, motion.deflection, choice.crossings, choice.worst)
  const travelled = atLimit(motion, motion.travelled, choice.crossings, choice.worst)
  if (!moved || !travelled || !atLimit(motion, motion.deflection, choice.crossings, otherSide)) return
  put('deflection_at_limit', moved, single, 'limit', kinds.motion)
  put('secant_at_limit', inverse(moved, motion.limit), single, 'limit', kinds.stiffness)
  if (motion.fullTravel === null) return
  const scatter = { ...single, s: single.s * motion.travelledPerMotion }
  put('travel_lost', times(travelled, 1 / motion.fullTravel), scatter, 'limit', 'number')
}

/** Mean over the loadings of one direction, each interpolated between its two readings about the limit load. */
export const atLimit = (
  motion: Motion,
  values: Float64Array,
  crossings: readonly Crossing[],
  side: 1 | -1,
): Fitted | null => {
  const own = crossings.filter((crossing) => crossing.side === side)
  if (own.length === 0) return null
  const parts: Record<string, number> = {}
  let value = 0
  own.forEach(({ below, above }, i) => {
    const low = (motion.load[below] as number) * side
    const high = (motion.load[above] as number) * side
    const w = below === above ? 1 : (motion.limit - low) / (high - low)
    value += (side * ((1 - w) * (values[below] as number) + w * (values[above] as number))) / own.length
    parts[`${side > 0 ? 'positive' : 'negative'}-${i + 1}`] = Math.hypot(1 - w, w) / own.length
  })
  return { value, parts: () => parts }
}
