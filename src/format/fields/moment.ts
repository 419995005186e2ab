/** Points in time and days, as written: nothing is guessed, no local time is assumed. */
import { refuse } from '../../quantity/faults.ts'
import type { Result } from '../../quantity/types.ts'
import type { Moment } from '../types.ts'

const MOMENT = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)(?::(\d\d)(?:\.\d+)?)?(Z|[+-]\d\d:\d\d)?$/
const EXAMPLE = '2026-03-04T09:12+01:00'
const HINT = `write date, time and offset from UTC, as in \`${EXAMPLE}\``

/** `2026-03-04T09:12+01:00` (RFC 3339, seconds may be left out). */
export function readMoment(text: string): Result<Moment> {
  const whole = (code: string, message: string, hint = HINT) =>
    refuse(code, message, 0, text.length, { hint })
  if (/^\d{4}-\d\d-\d\d$/.test(text)) {
    return isDay(text) ? whole('time/bare-date', `\`${text}\` is a date without a time`) : impossibleDay(text)
  }
  const found = MOMENT.exec(text)
  if (!found) return whole('time/syntax', `\`${text}\` is no point in time`)
  const [, date = '', hours = '', minutes = '', seconds = '0', zone] = found
  if (!isDay(date)) return impossibleDay(date)
  if (Number(hours) > 23 || Number(minutes) > 59 || Number(seconds) > 59) {
    const message = `\`${text.slice(11, 16)}\` is no time of day`
    return refuse('time/impossible', message, 11, text.length - (zone?.length ?? 0), { hint: HINT })
  }
  if (zone === undefined) {
    return whole(
      'time/no-offset',
      `\`${text}\` does not say its offset from UTC`,
      `write \`${text}+01:00\`, or \`${text}Z\``,
    )
  }
  const offset = zoneMinutes(zone)
  if (offset === undefined) {
    const message = `\`${zone}\` is no offset from UTC`
    return refuse('time/impossible', message, text.length - zone.length, text.length, { hint: HINT })
  }
  const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
  const epoch =
    Date.UTC(year, month - 1, day, Number(hours), Number(minutes), Number(seconds)) - offset * 60_000
  return { ok: true, value: { text, epoch, date, clock: `${hours}:${minutes}` } }
}

/** `2026-03-04`, a day that there is. */
export function readDay(text: string): Result<string> {
  if (isDay(text)) return { ok: true, value: text }
  if (/^\d{4}-\d\d-\d\d$/.test(text)) return impossibleDay(text)
  const hint = 'write year, month and day, as in `2026-03-04`'
  return refuse('time/syntax', `\`${text}\` is no date`, 0, text.length, { hint })
}

function impossibleDay(date: string): { ok: false; error: ReturnType<typeof refuse>['error'] } {
  const hint = 'write year, month and day, as in `2026-03-04`'
  return refuse('time/impossible', `there is no day \`${date}\``, 0, date.length, { hint })
}

/** Whether the Gregorian calendar has this day. */
function isDay(text: string): boolean {
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text)
  if (!found) return false
  const [year = 0, month = 0, day = 0] = found.slice(1).map(Number)
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  return day >= 1 && day <= (days[month - 1] ?? 0)
}

/** Minutes east of UTC; real offsets lie between −12 h and +14 h. */
function zoneMinutes(zone: string): number | undefined {
  if (zone === 'Z') return 0
  const hours = Number(zone.slice(1, 3))
  const minutes = Number(zone.slice(4, 6))
  const total = (zone.startsWith('-') ? -1 : 1) * (hours * 60 + minutes)
  return minutes > 59 || total < -12 * 60 || total > 14 * 60 ? undefined : total
}
