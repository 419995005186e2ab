/** Times of a file as seconds since midnight of the first row's day, as in a table of readings. */
import { readTime, type TimeFormat, type TimeSeen } from './time-format.ts'

const DAY = 86_400

export type Clock = {
  /** Seconds, NaN where the cell is no such time. */
  readonly read: (start: number, end: number) => number
  /** Most figures behind the seconds so far. */
  readonly places: () => number
}

/**
 * A clock without a date that goes back by more than half a day has passed midnight. With a date nothing is guessed;
 * where the cells say their offset from UTC, a change of it (summer time) is no step.
 */
export function clockOf(text: string, format: TimeFormat): Clock {
  const seen: TimeSeen = { day: 0, seconds: 0, zone: 0, places: 0 }
  let firstDay = 0
  let firstZone = 0
  let begun = false
  let days = 0
  let last = Number.NaN
  let places = 0
  const read = (start: number, end: number): number => {
    if (!readTime(text, start, end, format, seen)) return Number.NaN
    if (!begun) {
      firstDay = seen.day
      firstZone = seen.zone
      begun = true
    }
    if (seen.places > places) places = seen.places
    if (format.hasDate) return (seen.day - firstDay) * DAY + seen.seconds - (seen.zone - firstZone)
    if (seen.seconds + days * DAY < last - DAY / 2) days++
    last = seen.seconds + days * DAY
    return last
  }
  return { read, places: () => places }
}
