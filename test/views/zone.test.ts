/**
 * Times of git on the clock of the campaign. Summer time in the European Union begins at 01:00 UTC on the last Sunday
 * of March (Directive 2000/84/EC, article 2); India keeps UTC+05:30 and Newfoundland UTC−03:30 in winter (IANA time
 * zone database).
 */
import { describe, expect, it } from 'vitest'
import { instantWords } from '../../src/views/words.ts'
import { zoned } from '../../src/views/zone.ts'

describe('a moment in another zone', () => {
  it.each([
    ['Europe/Oslo', '2026-03-29T00:59:59Z', '2026-03-29T01:59+01:00'],
    ['Europe/Oslo', '2026-03-29T01:00:00Z', '2026-03-29T03:00+02:00'],
    ['Asia/Kolkata', '2026-01-01T00:00:00+00:00', '2026-01-01T05:30+05:30'],
    ['America/St_Johns', '2026-01-01T00:10:00+01:00', '2025-12-31T19:40-03:30'],
    ['UTC', '2026-01-01T00:00:00+01:00', '2025-12-31T23:00+00:00'],
  ])('%s: %s is %s', (zone, iso, there) => {
    expect(zoned(zone)(iso)).toBe(there)
    expect(Date.parse(zoned(zone)(iso))).toBe(Math.floor(Date.parse(iso) / 60_000) * 60_000)
  })
  it.each([
    ['nowhere/at-all', '2026-01-01T00:00:00+01:00'],
    ['Europe/Oslo', '2026-01-01'],
    ['Europe/Oslo', '2026-01-01T09:00'],
    ['Europe/Oslo', 'yesterday'],
  ])('%s: %s stays as it was written', (zone, text) => {
    expect(zoned(zone)(text)).toBe(text)
  })
  it('is read with its offset', () => {
    expect(instantWords('2026-03-04T09:12+01:00')).toBe('4 March 2026, 09:12 +01:00')
    expect(instantWords('2026-03-04T09:12Z')).toBe('4 March 2026, 09:12 UTC')
    expect(instantWords('2026-03-04')).toBe('4 March 2026')
  })
})
