/** Times as records write them. */

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

/** A day such as 30 February is taken for another one by the clock, and is none. */
export const isMoment = (text: string): boolean => {
  if (!MOMENT.test(text) || Number.isNaN(Date.parse(text))) return false
  return new Date(`${text.slice(0, 10)}T00:00Z`).toISOString().startsWith(text.slice(0, 10))
}
