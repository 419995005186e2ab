/** Numbers as people type them. What a comma means is common practice, no source. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seenDecimalComma, signTurned, typedNumber } from '../../src/form/numbers.ts'

const textOf = (typed: string, comma?: boolean): string => {
  const read = typedNumber(typed, comma)
  return read.is === 'number' ? read.text : read.is
}

describe('a typed number', () => {
  it.each([
    ['12.50', '12.50'],
    ['12,50', '12.50'],
    ['-12,5', '-12.5'],
    ['−12,5', '-12.5'],
    ['0,123', '0.123'],
    [',5', '.5'],
    ['1,2345', '1.2345'],
    ['1234,567', '1234.567'],
    ['1,234.5', '1234.5'],
    ['1.234,5', '1234.5'],
    ['1,234,567', '1234567'],
    ['1 234,5', '1234.5'],
    ['1’234.5', '1234.5'],
    ['1,5e3', '1.5e3'],
    ['1.234', '1.234'],
    ['1,234', 'ambiguous'],
    ['-12,345', 'ambiguous'],
    ['12,', 'other'],
    ['OL', 'other'],
    ['', 'other'],
    ['12,5 Pa', 'other'],
  ])('%s is %s', (typed, text) => {
    expect(textOf(typed)).toBe(text)
  })
  it('asks about `1,234` unless told', () => {
    expect(typedNumber('1,234')).toEqual({ is: 'ambiguous', decimal: '1.234', grouped: '1234' })
    expect(textOf('1,234', true)).toBe('1.234')
    expect(textOf('1,234', false)).toBe('1234')
  })
  it('is itself with a comma for the point, digit for digit, unless it could be grouped', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 1, max: 8 }),
        (whole, digits) => {
          fc.pre(digits !== 3)
          const text = `${whole}.${'1'.repeat(digits)}`
          expect(textOf(text.replace('.', ','))).toBe(text)
        },
      ),
    )
  })
})

describe('a column', () => {
  it.each([
    [['1,5', '1,234'], true],
    [['1,234', '1,234.5'], false],
    [['1,234', '2.5'], false],
    [['1,234', '2,345'], undefined],
    [['1,5', '2.5'], undefined],
    [[], undefined],
  ])('%j has a decimal comma: %s', (cells, comma) => {
    expect(seenDecimalComma(cells)).toBe(comma)
  })
})

it('turns a sign, also of a cell with nothing in it', () => {
  expect(['', '5', '-5', '−5', '+5'].map(signTurned)).toEqual(['-', '-5', '5', '5', '-5'])
})
