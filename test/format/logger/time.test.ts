/** Times by format, against the calendar of the language (`Date.UTC`), which is the proleptic Gregorian one of ISO 8601. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dayNumber, readTime, timeFormat } from '../../../src/format/logger/time-format.ts'

const read = (written: string, cell: string) => {
  const format = timeFormat(written)
  if (!format.ok) throw new Error(format.error[0]?.message)
  const seen = { day: 0, seconds: 0, zone: 0, places: 0 }
  return readTime(cell, 0, cell.length, format.value, seen) ? seen : null
}

const two = (value: number) => String(value).padStart(2, '0')

test('days are those of the calendar', () => {
  fc.assert(
    fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (day) => {
      const date = new Date(day * 86_400_000)
      if (date.getUTCFullYear() < 1) return
      expect(dayNumber(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(day)
    }),
    { numRuns: 1000 },
  )
})

describe('a moment in each way of writing it', () => {
  const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
  const ways: Readonly<Record<string, (d: Date) => string>> = {
    'DD.MM.YYYY HH:mm:ss': (d) =>
      `${two(d.getUTCDate())}.${two(d.getUTCMonth() + 1)}.${d.getUTCFullYear()} ${clock(d)}`,
    'M/D/YYYY h:mm:ss A': (d) =>
      `${d.getUTCMonth() + 1}/${d.getUTCDate()}/${d.getUTCFullYear()} ${d.getUTCHours() % 12 || 12}:${two(d.getUTCMinutes())}:${two(d.getUTCSeconds())} ${d.getUTCHours() < 12 ? 'AM' : 'PM'}`,
    ISO: (d) => d.toISOString(),
    'YYYY-MM-DD HH:mm:ss': (d) => d.toISOString().slice(0, 19).replace('T', ' '),
    'DD-MMM-YYYY HH:mm:ss': (d) =>
      `${two(d.getUTCDate())}-${MONTHS[d.getUTCMonth()]}-${d.getUTCFullYear()} ${clock(d)}`,
    YYYYMMDDHHmmss: (d) => d.toISOString().slice(0, 19).replace(/[-:T]/g, ''),
    'epoch s': (d) => String(Math.floor(d.getTime() / 1000)),
  }
  const clock = (d: Date) => d.toISOString().slice(11, 19)

  test.each(Object.entries(ways))('%s', (format, write) => {
    const moments = fc.integer({ min: 315_532_800, max: 4_102_444_800 })
    fc.assert(
      fc.property(moments, (epoch) => {
        const seen = read(format, write(new Date(epoch * 1000)))
        expect(seen && seen.day * 86_400 + seen.seconds).toBe(epoch)
      }),
      { numRuns: 300 },
    )
  })

  test('fractions of a second are kept, with point or comma', () => {
    expect(read('HH:mm:ss', '09:12:30.250')).toMatchObject({ seconds: 33_150.25, places: 3 })
    expect(read('HH:mm:ss', '09:12:30,5')).toMatchObject({ seconds: 33_150.5, places: 1 })
    expect(read('HH:mm:ss.SSS', '09:12:30.001')?.seconds).toBe(33_150.001)
    expect(read('epoch ms', '1772611920125')).toMatchObject({ day: 20516, seconds: 29_520.125 })
  })

  test('an offset from UTC is read', () => {
    expect(read('ISO', '2026-03-04T09:12:00+01:00')).toMatchObject({ zone: 3600, seconds: 33_120 })
    expect(read('ISO', '2026-03-04T09:12:00-0330')?.zone).toBe(-12_600)
    expect(read('ISO', '2026-03-04T09:12:00')?.zone).toBe(0)
  })

  test('noon and midnight of a clock of twelve', () => {
    expect(read('h:mm A', '12:00 AM')?.seconds).toBe(0)
    expect(read('h:mm A', '12:00 PM')?.seconds).toBe(43_200)
    expect(read('h:mm A', '1:05\u202fpm')?.seconds).toBe(47_100)
  })

  test.each([
    ['DD.MM.YYYY HH:mm', '29.02.2026 10:00'],
    ['DD.MM.YYYY HH:mm', '04.13.2026 10:00'],
    ['HH:mm:ss', '24:00:00'],
    ['HH:mm:ss', '09:60:00'],
    ['HH:mm:ss', '09:12'],
    ['HH:mm', '09:12:30'],
    ['h:mm A', '13:00 PM'],
    ['h:mm A', '9:00'],
    ['YYYY-MM-DD HH:mm', '2026-3-4T10:00'],
    ['DD-MMM-YYYY HH:mm', '04-Mrz-2026 10:00'],
    ['HH:mm:ss', '46085.383'],
  ])('%s does not read %s', (format, cell) => expect(read(format, cell)).toBeNull())
})

test.each([
  ['yyyy-MM-dd HH:mm', '`yyyy` is no part of a time', '`YYYY` is meant, perhaps'],
  ['hh:mm:ss', '`h` is an hour of twelve and needs `A`, for AM or PM', 'write `H` for an hour of 24'],
  ['HH:mm A', '`A` stands beside an hour of 24', 'write `h` for the hour'],
  ['DD.MM HH:mm', '`DD.MM HH:mm` has only a part of the date', 'write year, month and day, or none of them'],
])('the format %s is refused', (written, message, hint) => {
  const format = timeFormat(written)
  expect(format.ok ? [] : format.error).toMatchObject([{ message, hint }])
})
