/** Days and moments of calls: by the Gregorian calendar, leap years as ISO 8601 has them. */
import { expect, test } from 'vitest'
import { isDay } from '../../scripts/command.ts'
import { isMoment } from '../../scripts/new/when.ts'

test.each(['2026-03-04', '2024-02-29', '2000-02-29', '2026-12-31'])('%s is a day', (text) => {
  expect(isDay(text)).toBe(true)
  expect(isMoment(`${text}T09:12+01:00`)).toBe(true)
})

test.each(['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-03-00', 'today', ''])(
  '%s is none',
  (text) => {
    expect(isDay(text)).toBe(false)
    expect(isMoment(`${text}T09:12+01:00`)).toBe(false)
  },
)

test('a moment has a time of day and an offset', () => {
  expect(isMoment('2026-03-04T09:12')).toBe(false)
  expect(isMoment('2026-03-04T25:12Z')).toBe(false)
})
