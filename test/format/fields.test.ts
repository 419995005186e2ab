import { describe, expect, test } from 'vitest'
import { readDay, readMoment } from '../../src/format/fields/moment.ts'
import { readRule } from '../../src/format/fields/rule.ts'
import { misfit, USUAL_UNITS } from '../../src/format/kind-units.ts'
import { KINDS } from '../../src/quantity/kinds.ts'
import { parseUnit } from '../../src/quantity/unit-text.ts'

describe('points in time', () => {
  // RFC 3339, section 5.8: the second is said there to be the same moment as 1996-12-20T00:39:57Z.
  test.each([
    ['1985-04-12T23:20:50Z', '1985-04-12T23:20:50.000Z'],
    ['1996-12-19T16:39:57-08:00', '1996-12-20T00:39:57.000Z'],
    ['1937-01-01T12:00:27+00:20', '1937-01-01T11:40:27.000Z'],
    ['2026-03-04T09:12+01:00', '2026-03-04T08:12:00.000Z'],
  ])('%s is %s', (text, utc) => {
    const read = readMoment(text)
    expect(read.ok && new Date(read.value.epoch).toISOString()).toBe(utc)
  })

  // Leap years by the rule of the Gregorian calendar: RFC 3339, appendix C.
  test.each([
    ['2024-02-29', true],
    ['2023-02-29', false],
    ['2000-02-29', true],
    ['1900-02-29', false],
    ['2026-04-31', false],
  ])('there is a day %s: %s', (text, there) => expect(readDay(text).ok).toBe(there))

  test('date and clock are those that were written, whatever the offset', () => {
    const read = readMoment('2026-03-04T23:59-08:00')
    expect(read.ok && [read.value.date, read.value.clock]).toEqual(['2026-03-04', '23:59'])
  })
})

test('a rule has a confidence between one half and one', () => {
  expect(readRule('guarded 95 %')).toMatchObject({ ok: true, value: { kind: 'guarded', p: 0.95 } })
  expect(readRule('guarded 97.5%')).toMatchObject({ ok: true, value: { p: 0.975 } })
  for (const text of ['guarded 50 %', 'guarded 100 %', 'guarded', 'Simple', '95 %'])
    expect(readRule(text).ok, text).toBe(false)
})

test('units that hints name are units of their kind', () => {
  for (const [kind, { unit }] of Object.entries(KINDS)) {
    const units = Object.entries(USUAL_UNITS).find(([name]) => name === kind)?.[1] ?? [unit]
    for (const text of units.filter((text) => text !== 'text')) {
      const read = parseUnit(text)
      if (!read.ok) throw new Error(`${kind}: ${text} is no unit`)
      const kinds = Object.keys(KINDS).filter((name): name is keyof typeof KINDS => name === kind)
      expect(misfit(read.value, kinds), `${kind}: ${text}`).toBeUndefined()
    }
  }
})
