/** Where a result, its interval and its limits stand on a strip that is `width` wide, for the drawing in a row. */
import type { Against } from '../views/view.ts'

export type IntervalDrawing = {
  readonly value: number
  readonly low: number
  readonly high: number
  readonly limits: readonly number[]
  /** Stretches that are not accepted. */
  readonly refused: readonly { readonly from: number; readonly to: number }[]
  /** Zero on the strip, where it lies within. */
  readonly zero: number | null
}

export const drawInterval = (against: Against, width: number, pad: number): IntervalDrawing => {
  const U = against.U ?? 0
  const seen = [against.value - U, against.value + U, ...against.limits]
  const least = Math.min(...seen)
  const most = Math.max(...seen)
  const size = Math.max(Math.abs(most), Math.abs(least))
  // Numbers that differ by the tail of a float only are one place on the strip.
  const spread = most - least > size * 1e-9 ? most - least : size
  const room = (spread > 1e-200 ? spread : 1) * 0.15
  const from = least - room
  const scale = (width - 2 * pad) / (most + room - from)
  const at = (x: number): number => Math.round((pad + (x - from) * scale) * 10) / 10
  const limits = against.limits.map(at)
  const lower = { from: pad, to: Math.min(...limits) }
  const upper = { from: Math.max(...limits), to: width - pad }
  const refused = { below: [upper], above: [lower], between: [lower, upper] }[against.direction]
  const zero = from < 0 && most + room > 0 ? at(0) : null
  return {
    value: at(against.value),
    low: at(against.value - U),
    high: at(against.value + U),
    limits,
    refused,
    zero,
  }
}
