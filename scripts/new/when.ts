/** Times as records write them. */
import { isDay } from '../command.ts'

const two = (number: number): string => String(number).padStart(2, '0')

/** Local time of the machine with its offset, to the minute: the hangar's laptop stands in the hangar. */
export const now = (): string => {
  const date = new Date()
  const offset = -date.getTimezoneOffset()
  const sign = offset < 0 ? '-' : '+'
  const zone = `${sign}${two(Math.trunc(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}${zone}`
}

const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2})?(?:Z|[+-]\d{2}:\d{2})$/

export const isMoment = (text: string): boolean =>
  MOMENT.test(text) && !Number.isNaN(Date.parse(text)) && isDay(text.slice(0, 10))
