/**
 * A text that is read again out of what was kept says the same, to the last bit, as one that is read for the first
 * time. What a first reading says is tested in the other files of this folder.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { decodePieces } from '../../../src/format/logger/decode.ts'
import { readLogger } from '../../../src/format/logger/read.ts'
import { survey, surveyOptions } from '../../../src/format/logger/survey.ts'
import type { LoggerColumn, LoggerOptions, LoggerText } from '../../../src/format/logger/types.ts'
import { parseStated } from '../../../src/quantity/quantity-text.ts'

const said = (options: LoggerOptions, text: LoggerText): unknown => {
  const read = readLogger(options, text, 'log.csv')
  if (!read.ok) return { faults: read.error }
  const { readings, warnings, placeOf, lineOf } = read.value
  const rows = Array.from({ length: readings.rows }, (_, row) => row)
  return {
    warnings,
    notes: readings.notes,
    lines: rows.map(lineOf),
    columns: readings.columns.map(({ values, missing, cells, cell: _, ...column }, at) => ({
      ...column,
      values: [...values],
      missing: [...missing],
      cells: [...cells],
      places: rows.map((row) => placeOf(row, at)),
    })),
  }
}

const offset = parseStated('0.5 bar')
if (!offset.ok) throw new Error('no offset')

const number = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -99, max: 99 }).map((value) => `${value},5`) },
  fc.constantFrom('7', '0,125', '-9999', '-9999,00', '1e3'),
)
const gap = fc.constantFrom('OL', '', '-', 'n/a', 'x')
const rarely = (odd: number) =>
  fc.oneof({ weight: 40 - odd, arbitrary: number }, { weight: odd, arbitrary: gap })
const row = (odd: number, short: number) =>
  fc.tuple(
    fc.oneof({ weight: 30, arbitrary: fc.constant(0) }, { weight: odd, arbitrary: fc.constant(-90) }),
    rarely(odd),
    rarely(odd),
    fc.constantFrom('ok', 'OL', '', 'late'),
    fc.oneof({ weight: 30, arbitrary: fc.constant(false) }, { weight: short, arbitrary: fc.constant(true) }),
  )

/** A log of a clock, two columns of numbers and a last one of words, with more or fewer faults in it. */
const log = fc
  .tuple(fc.constantFrom(0, 0, 1, 4), fc.constantFrom(0, 0, 1))
  .chain(([odd, short]) => fc.array(row(odd, short), { minLength: 3, maxLength: 25 }))
  .map((rows) => {
    const lines = rows.map(([back, p, q, word, isShort], at) => {
      const seconds = 43_200 + 20 * at + back
      const clock = [seconds / 3600, (seconds / 60) % 60, seconds % 60]
        .map((part) => String(Math.floor(part)).padStart(2, '0'))
        .join(':')
      return [clock, p, q, ...(isShort ? [] : [word])].join(';')
    })
    return ['t;p;q;state', 'hh:mm:ss;bar;bar;text', ...lines].join('\n')
  })

const columns = fc
  .record({
    time: fc.constantFrom<LoggerColumn>({ from: 't', format: 'HH:mm:ss' }, { from: 'p', unit: 's' }),
    a: fc.constantFrom<LoggerColumn>(
      { from: 'p', unit: 'bar' },
      { from: 'p', unit: 'kPa', scale: -2 },
      { from: 'p', unit: 'bar', offset: offset.value },
    ),
    b: fc.constantFrom<LoggerColumn>({ from: 'q', unit: 'mbar' }, { from: 'p', unit: '°C' }),
    state: fc.constant<LoggerColumn>({ from: 'state', unit: 'text' }),
  })
  .chain((all) => fc.subarray(Object.entries(all), { minLength: 1 }).map((some) => Object.fromEntries(some)))

const asked = fc.record(
  {
    columns,
    missing: fc.subarray(['OL', '', '-9999', 'x', '-']),
    decimal: fc.constantFrom(',' as const, '.' as const),
    use: fc.constantFrom<NonNullable<LoggerOptions['use']>>(
      { from: { form: 'elapsed', seconds: 30 } },
      { to: { form: 'line', line: 9 } },
    ),
  },
  { requiredKeys: ['columns', 'missing'] },
)

describe('a text that is read several times', () => {
  test('says each time what a first reading says', () => {
    fc.assert(
      fc.property(log, fc.array(asked, { minLength: 1, maxLength: 5 }), (text, readings) => {
        const fresh = decodePieces([new TextEncoder().encode(text)])
        const again: LoggerText = { ...fresh, kept: new Map() }
        const found = survey(again)
        if (found.columns.length > 0) readLogger(surveyOptions(found), again, '')
        for (const options of readings) expect(said(options, again)).toEqual(said(options, fresh))
      }),
      { numRuns: 600 },
    )
  })

  const lines = Array.from({ length: 40 }, (_, row) => `${row};${row}.5;${row === 7 ? 'OL' : row}`)
  const text = decodePieces([new TextEncoder().encode(['t;p;q', ...lines].join('\n'))])
  const missingOf = (options: LoggerOptions, source: LoggerText) => {
    const read = readLogger(options, source)
    return read.ok ? read.value.readings.columns.map(({ missing }) => missing.buffer) : []
  }

  test('is gone through once, whatever the names and units', () => {
    const kept: LoggerText = { ...text, kept: new Map() }
    const p = { from: 'p', unit: 'bar' }
    const q = { from: 'q', unit: 'N' }
    const [time, one, gaps] = missingOf(
      { columns: { time: { from: 't', unit: 's' }, p, q }, missing: ['OL'] },
      kept,
    )
    expect(gaps).toBeDefined()
    const [load, second] = missingOf(
      { columns: { load: { ...q, unit: 'lbf' }, p }, missing: ['OL', '-'] },
      kept,
    )
    expect(load).toBe(gaps)
    expect(second).toBe(one)
    const [min] = missingOf({ columns: { time: { from: 't', unit: 'min' } } }, kept)
    expect(min).toBe(time)
    // Where a value is missing it matters what is listed.
    expect(missingOf({ columns: { q } }, kept)).toEqual([])
    expect(missingOf({ columns: { q }, missing: ['OL', 'x'] }, kept)[0]).not.toBe(gaps)
  })
})
