/** Which rows of a log are used: from and to a time or a line. */
import { lineStart } from './head.ts'
import type { LoggerOptions, UsePoint } from './types.ts'

const DAY = 86_400
/** A row on the limit must not be lost by the tail of a float. */
const TAIL = 1e-6

/** Where a row lies by its time: −1 before, 0 within, 1 behind. */
export type Window = (time: number) => -1 | 0 | 1

type Use = NonNullable<LoggerOptions['use']>

/** The part of the text that `line …` leaves; `to` is taken in. */
export function linesUsed(text: string, from: number, use: Use = {}): { from: number; to: number } {
  const start = use.from?.form === 'line' ? Math.max(from, lineStart(text, use.from.line)) : from
  const end = use.to?.form === 'line' ? lineStart(text, use.to.line + 1) : text.length
  return { from: start, to: Math.max(start, end) }
}

/** True where a row's time decides. */
export const isTimed = (point: UsePoint | undefined): boolean => point !== undefined && point.form !== 'line'

/**
 * Elapsed times count from the first sample; a clock time is the first such time after it, and an end the first after
 * the beginning. What comes back from behind the end is not within.
 */
export function windowOf(use: Use): Window {
  let low = Number.NaN
  let high = Number.NaN
  let within = false
  const begin = (first: number) => {
    const from = isTimed(use.from) ? pointAfter(use.from, first, first) : first
    low = from
    high = isTimed(use.to) ? pointAfter(use.to, first, from) : Number.POSITIVE_INFINITY
  }
  return (time) => {
    if (Number.isNaN(time)) return within ? 0 : -1
    if (Number.isNaN(low)) begin(time)
    if (!within && time < low - TAIL) return -1
    if (time > high + TAIL) return within ? 1 : -1
    within = true
    return 0
  }
}

function pointAfter(point: UsePoint | undefined, first: number, from: number): number {
  if (point?.form === 'elapsed') return first + point.seconds
  const seconds = point?.form === 'clock' ? point.seconds : 0
  return seconds + DAY * Math.max(0, Math.ceil((from - TAIL - seconds) / DAY))
}
