/** Times that the form writes: from a moment and the offset of the place, both given from outside. */
import { readMoment } from '../format/fields/moment.ts'
import { type ColumnEntry, isBlankRow, type RunState } from './state.ts'

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

/** `2026-03-04T09:12+01:00` */
export const momentText = (now: Now): string => {
  const { offset } = now
  const sign = offset < 0 ? '-' : '+'
  const zone = `${sign}${two(Math.trunc(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`
  return `${local(now).toISOString().slice(0, 16)}${zone}`
}

/** When the first and the last reading were stamped: kept beside the run, not in it. */
export type Stamps = { readonly first: number; readonly last: number } | null

const SECONDS: Readonly<Record<string, number>> = { s: 1, min: 60, h: 3600 }

/** Time since the first stamp in the unit of the column, to about a second. */
const elapsed = (seconds: number, unit: string): string => {
  const size = SECONDS[unit] ?? 1
  const decimals = size === 1 ? 0 : size === 60 ? 2 : 4
  return (seconds / size).toFixed(decimals)
}

/** What the time column of a stamped row says; empty where only the person can tell (rows typed before the first stamp). */
export const stampText = (state: RunState, { unit }: ColumnEntry, now: Now, stamps: Stamps): string => {
  if (unit === 'hh:mm' || unit === 'hh:mm:ss') return clockText(now, unit === 'hh:mm:ss')
  if (SECONDS[unit] === undefined) return ''
  if (stamps) return elapsed((now.epoch - stamps.first) / 1000, unit)
  return state.rows.every(isBlankRow) ? '0' : ''
}

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
