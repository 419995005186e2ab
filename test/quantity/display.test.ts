import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatNumber, formatQuantity } from '../../src/quantity/display.ts'
import { exact, unknown } from '../../src/quantity/quantity.ts'
import type { Quantity, Unit } from '../../src/quantity/types.ts'
import { parseUnit } from '../../src/quantity/unit-text.ts'

function unit(text: string): Unit {
  const result = parseUnit(text)
  if (!result.ok) throw new Error(text)
  return result.value
}
/** A value in a unit with this U for 95 %. */
function quantity(value: number, U: number, text: string): Quantity {
  const { factor, offset, dim } = unit(text)
  const part = {
    u: (U * factor) / 1.959963984540054,
    dof: Number.POSITIVE_INFINITY,
    pool: 's',
    shape: 'normal' as const,
  }
  return { value: value * factor + offset, dim, parts: { s: part }, why: [] }
}

describe('GUM 7.2.6: two significant digits of the uncertainty, the value to the same place', () => {
  test.each([
    [10.05762, 0.027, 'ohm', '10.058 ± 0.027 ohm'],
    [-2653.4, 12.4, 'Pa', '−2653 ± 12 Pa'],
    [1234.5, 123, 'N', '1230 ± 120 N'],
    [12345, 1234, 'N', '12300 ± 1200 N'],
    [3.24159, 0.0996, '1', '3.24 ± 0.10'],
    [0.04, 0.3, 'cm³/min', '0.04 ± 0.30 cm³/min'],
    [-0.001, 0.3, 'Pa', '0.00 ± 0.30 Pa'],
    [20.04, 0.5, '°C', '20.04 ± 0.50 °C'],
    [1.23456e-11, 5.4e-13, 'm³/Pa', '(1.235 ± 0.054)·10⁻¹¹ m³/Pa'],
    [2.5e7, 3e4, 'Pa', '(2.5000 ± 0.0030)·10⁷ Pa'],
  ])('%d ± %d %s', (value, U, text, shown) => {
    expect(formatQuantity(quantity(value, U, text), unit(text)).text).toBe(shown)
  })
})

test('JSON keeps the hyphen; the number can be read again', () => {
  expect(formatQuantity(quantity(-2653.4, 12.4, 'Pa'), unit('kPa'))).toEqual({
    value: '-2.653',
    U: '0.012',
    unit: 'kPa',
    text: '−2.653 ± 0.012 kPa',
  })
})

test('exact, and not known', () => {
  const dim = unit('mm').dim
  expect(formatQuantity(exact(0.0381, dim), unit('in')).text).toBe('1.5 in')
  expect(formatQuantity(exact(0, dim), unit('mm'))).toMatchObject({ value: '0', U: '0' })
  expect(formatQuantity(unknown(0.0123456, dim, 'why'), unit('mm'))).toMatchObject({
    U: null,
    text: '12.35 mm (uncertainty not known)',
  })
})

test('numbers without locale and without exponents where they can be read', () => {
  expect([1234.5678, -0.0031, 0.00012, 999999, 0, 12].map((x) => formatNumber(x, 3))).toEqual([
    '1230',
    '-0.00310',
    '0.000120',
    '1.00e6',
    '0',
    '12.0',
  ])
  expect(formatNumber(1.5e-9, 2)).toBe('1.5e-9')
  expect(formatNumber(Number.NaN, 2)).toBe('not a number')
})

test('property: what is shown is within half of its last place of the value', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
      fc.double({ min: 1e-9, max: 1e6, noNaN: true }),
      (value, U) => {
        const shown = formatQuantity(quantity(value, U, 'N'), unit('N'))
        expect(Math.abs(Number(shown.value) - value)).toBeLessThanOrEqual(U * 0.051 + Math.abs(value) * 1e-14)
        expect(Math.abs(Number(shown.U) - U)).toBeLessThanOrEqual(U * 0.051)
      },
    ),
    { numRuns: 2000 },
  )
})
