/** How well a flow is known after so long a time, and how long it takes to know it so well. */
import type { InstrumentModel } from '../method.ts'

/** One-sided 95 % of the normal distribution. */
const SURE = 1.645

/** Whose slope: of the whole time, or of the second half, which half the amount carries. */
type Part = 'whole' | 'late'

/**
 * By what part a flow must lie above a limit to be shown above it with 95 %, after a time T (s) at `flow`, an amount per
 * time in the unit of the scale: digits end to end r/√6, non-linearity as large as the zero error where not stated
 * (√2 u end to end), the watch u_t/T, and the scale. Scatter of the readings comes on top. NaN where the accuracy is not stated.
 */
export const roomNeeded = (
  flow: number,
  time: number,
  scale: InstrumentModel | undefined,
  timeError: number,
  part: Part,
): number => {
  if (!scale || scale.gain === null || scale.offset === null) return Number.NaN
  const amount = flow * time
  const digits = scale.resolution / Math.sqrt(6) / (part === 'late' ? amount / 2 : amount)
  const bend = (Math.SQRT2 * (scale.linearity ?? scale.offset)) / amount
  return SURE * Math.hypot(digits, bend, timeError / time, scale.gain)
}

/** Shortest time (s) after which so much room is enough; null where no time is. */
export const catchTime = (
  room: number,
  flow: number,
  scale: InstrumentModel | undefined,
  timeError: number,
  part: Part,
): number | null => {
  const always = SURE * (scale?.gain ?? Number.NaN)
  // All but the gain falls as 1/T, so what is left of the room after the gain is reached at one time.
  const perTime = roomNeeded(flow, 1, scale && { ...scale, gain: 0 }, timeError, part)
  const left = room * room - always * always
  return room > 0 && left > 0 && Number.isFinite(perTime) ? perTime / Math.sqrt(left) : null
}
