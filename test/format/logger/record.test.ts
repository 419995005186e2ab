/** Records of a delimited text against an independent reader (papaparse), and numbers against `Number`. */
import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { readNumber } from '../../../src/format/logger/number.ts'
import { cellsOf, cursorAt, nextRecord } from '../../../src/format/logger/record.ts'
import type { Delimiter } from '../../../src/format/logger/types.ts'

const recordsOf = (text: string, delimiter: Delimiter): string[][] => {
  const cursor = cursorAt(0)
  const records: string[][] = []
  while (cursor.at < text.length) {
    nextRecord(text, cursor, delimiter)
    records.push(cellsOf(text, cursor))
  }
  return records
}

const plain = fc.string({
  unit: fc.constantFrom('a', 'é', '0', '7', '.', '-', '°', '—'),
  minLength: 0,
  maxLength: 6,
})
const awkward = fc.string({
  unit: fc.constantFrom('a', '"', ',', ';', '\n', '1', 'x'),
  minLength: 0,
  maxLength: 8,
})
const quoted = (cell: string) => `"${cell.replaceAll('"', '""')}"`

describe('records', () => {
  test('any cells, quoted where they must be, are read as papaparse reads them', () => {
    const cell = fc.oneof(plain, awkward.map(quoted))
    const table = fc
      .integer({ min: 1, max: 5 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
      )
    fc.assert(
      fc.property(
        table,
        fc.constantFrom<Delimiter>(',', ';', '\t', '|'),
        fc.constantFrom('\n', '\r\n'),
        fc.boolean(),
        (rows, delimiter, end, closed) => {
          const text = rows.map((row) => row.join(delimiter)).join(end) + (closed ? end : '')
          const isBlank = (cells: readonly string[]) => cells.every((cell) => cell === '') && cells.length < 2
          // A blank line is no reading; the two count those at the end of a text differently.
          const theirs = Papa.parse<string[]>(text, { delimiter, newline: end }).data
          const expected = theirs.filter((cells) => !isBlank(cells))
          const ours = recordsOf(text, delimiter).filter((cells) => !isBlank(cells))
          expect(ours).toEqual(expected)
        },
      ),
      { numRuns: 500 },
    )
  })

  test('blanks around cells do not count, those inside do', () => {
    expect(recordsOf('  a b ;\t" c "\u00a0;  \r\nd', ';')).toEqual([['a b', ' c ', ''], ['d']])
  })

  test('runs of blanks and tabs part cells where blanks are the delimiter', () => {
    expect(recordsOf('  1   2\t 3  \n"a b" c\n', ' ')).toEqual([
      ['1', '2', '3'],
      ['a b', 'c'],
    ])
  })

  test('a quote that is never closed, and text behind a closed one, are found', () => {
    const open = cursorAt(0)
    nextRecord('1,"2,3\n4,5\n', open, ',')
    expect(open.open).toBe(2)
    const behind = cursorAt(0)
    nextRecord('"a"b,c\n', behind, ',')
    expect(behind.behind).toBe(3)
  })
})

describe('numbers', () => {
  const read = (text: string, decimal = '.') => {
    const seen = { power: 0 }
    const value = readNumber(text, 0, text.length, decimal.charCodeAt(0), seen)
    return { value, power: seen.power }
  }

  test('every number has the value that Number gives it, to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(Object.is(read(String(value)).value, Number(String(value)))).toBe(true)
      }),
      { numRuns: 2000 },
    )
    const figures = fc.string({ unit: fc.constantFrom(...'0123456789'), minLength: 1, maxLength: 24 })
    const exponent = fc.option(fc.integer({ min: -330, max: 290 }), { nil: undefined })
    fc.assert(
      fc.property(figures, figures, exponent, fc.constantFrom('', '-', '+'), (whole, part, power, sign) => {
        const text = `${sign}${whole}.${part}${power === undefined ? '' : `e${power}`}`
        const expected = Number(text)
        if (Number.isFinite(expected)) expect(Object.is(read(text).value, expected)).toBe(true)
        expect(read(text.replace('.', ','), ',').value).toEqual(read(text).value)
      }),
      { numRuns: 2000 },
    )
  })

  test('the last digit written', () => {
    expect(read('27.50').power).toBe(-2)
    expect(read('3e2').power).toBe(2)
    expect(read('-1.5E-03').power).toBe(-4)
    expect(read('1234').power).toBe(0)
  })

  test.each([
    '',
    '-',
    '.',
    '1,5',
    '1.2.3',
    '1e',
    'e5',
    '0x10',
    '1_000',
    'Infinity',
    'NaN',
    '1e999',
    '5%',
    '1 000',
    '--1',
  ])('`%s` is no number', (cell) => expect(read(cell).value).toBeNaN())
})
