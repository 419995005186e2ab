/** Times that the form writes: from a moment and the offset of the place, both given from outside. */
import { readMoment } from '../format/fields/moment.ts'

/** A moment as the device shows it. */
export type Now = {
  /** ms since 1970. */
  readonly epoch: number
  /** Minutes east of UTC. */
  readonly offset: number
}

const two = (number: number): string => String(number).padStart(2, '0')

const local = ({ epoch, offset }: Now): Date => new Date(epoch + offset * 60_000)

/** `2026-03-04` */
export const dayText = (now: Now): string => local(now).toISOString().slice(0, 10)

/** `09:12` or `09:12:30` */
export const clockText = (now: Now, seconds: boolean): string =>
  local(now)
    .toISOString()
    .slice(11, seconds ? 19 : 16)

/** `+01:00` */
export const offsetText = ({ offset }: Now): string =>
  `${offset < 0 ? '-' : '+'}${two(Math.trunc(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`

/** `2026-03-04T09:12+01:00` */
export const momentText = (now: Now): string => `${local(now).toISOString().slice(0, 16)}${offsetText(now)}`

/** By the clock on the wall where the run is made: with the offset that its `when` has, whatever the device is set to. */
export const onSite = (now: Now, when: string): Now => {
  const [, sign, hours, minutes] = /([+-])(\d\d):(\d\d)$/.exec(when.trim()) ?? []
  if (/T[\d:.]+Z$/.test(when.trim())) return { ...now, offset: 0 }
  if (sign === undefined) return now
  return { ...now, offset: (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) }
}

/** When readings were stamped: kept beside the run, not in it. */
export type Stamps = {
  readonly first: number
  readonly last: number
  /** What elapsed times count from; null where rows were there before the first stamp: only the person knows. */
  readonly zero: number | null
} | null

/** `2:05`, `1:02:05`: minutes and seconds, hours before them. */
export const durationText = (seconds: number): string => {
  const whole = Math.max(0, Math.floor(seconds))
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor((whole % 3600) / 60), whole % 60]
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`
}

/** The day of a run's `when`; empty where that is no time yet. */
export const dayOf = (when: string): string => {
  const moment = readMoment(when.trim())
  return moment.ok ? moment.value.date : ''
}
