/** The notations of GUM 7.2.2 and 7.2.4, and what the format makes of them. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toSI } from '../../src/quantity/convert.ts'
import { KINDS } from '../../src/quantity/kinds.ts'
import { parseStated } from '../../src/quantity/quantity-text.ts'
import { parseAccuracy, parseAtMost, parseRange } from '../../src/quantity/range-text.ts'
import { unitNames } from '../../src/quantity/unit-names.ts'

function stated(text: string, uncertainty?: 'expanded' | 'limits') {
  const result = parseStated(text, { uncertainty })
  if (!result.ok) throw new Error(`${text}: ${result.error[0]?.message}`)
  return result.value
}
function fault(text: string) {
  const result = parseStated(text)
  if (result.ok) throw new Error(`${text} was read as ${result.value.value}`)
  return result.error[0]
}

describe('what stands behind ±', () => {
  test.each([
    ['96.4 ± 0.6 L', 0.0964, 0.0003, 'normal'],
    ['96.4 +/- 0.6 L', 0.0964, 0.0003, 'normal'],
    ['96.4 L ± 600 mL', 0.0964, 0.0003, 'normal'],
    ['96.4 ± 0.6 L (k=3)', 0.0964, 0.0002, 'normal'],
    ['96.4 ± 0.6 L (k = 1)', 0.0964, 0.0006, 'normal'],
    ['96.4 ± 0.3 L (u)', 0.0964, 0.0003, 'normal'],
    ['12 ± 0.5 mm (limits)', 0.012, 0.0005 / Math.sqrt(3), 'rectangular'],
    ['12.0(3) N', 12, 0.3, 'normal'],
    ['100.02147(35) g', 0.10002147, 0.00000035, 'normal'],
    ['12(3) N', 12, 3, 'normal'],
    ['5 kN ± 1 %', 5000, 25, 'normal'],
    ['-5 kN ± 1 %', -5000, 25, 'normal'],
    ['3.1 ± 0.2 %', 0.031, 0.001, 'normal'],
    ['20 °C ± 0.5 K', 293.15, 0.25, 'normal'],
    ['20 ± 0.5 °C', 293.15, 0.25, 'normal'],
    ['68 °F ± 0.9 °F', 293.15, 0.25, 'normal'],
    ['5 ± 1', 5, 0.5, 'normal'],
  ])('%s', (text, value, u, shape) => {
    expect(stated(text).value).toBeCloseTo(value, 10)
    expect(stated(text).u).toBeCloseTo(u, 12)
    expect(stated(text).shape).toBe(shape)
  })
  test('in an instrument, ± means limits unless it says k', () => {
    expect(stated('2 ± 1 Pa', 'limits').u).toBeCloseTo(1 / Math.sqrt(3), 12)
    expect(stated('2 ± 1 Pa (k=2)', 'limits')).toMatchObject({ u: 0.5, shape: 'normal' })
  })
  test('not known, exact, and a value that is itself a standard uncertainty', () => {
    expect(stated('2.5 kPa')).toMatchObject({ value: 2500, u: null, exact: false })
    expect(stated('2.5 kPa (exact)')).toMatchObject({ value: 2500, u: 0, exact: true })
    expect(stated('0.3 K (u)')).toMatchObject({ value: 0.3, exact: false, isUncertainty: true })
  })
  test('digits as read are kept', () => {
    expect(stated('27.50 mm').digit).toBe(1e-5)
    expect(stated('-2653 Pa').digit).toBe(1)
    expect(stated('1.5e3 Pa').digit).toBe(100)
    expect(stated('20 °C').digit).toBe(1)
  })
})

describe('what is refused', () => {
  test.each([
    ['2,5 kPa', 'quantity/decimal-comma', 0, 3],
    ['1,234.5 Pa', 'quantity/decimal-comma', 0, 7],
    ['1 234 Pa', 'quantity/thousands', 0, 5],
    ["1'234 Pa", 'quantity/thousands', 0, 5],
    ['1_000 Pa', 'quantity/thousands', 0, 5],
    ['abc', 'quantity/syntax', 0, 3],
    ['', 'quantity/syntax', 0, 1],
    ['1e999 Pa', 'quantity/syntax', 0, 5],
    ['5 kts', 'unit/unknown', 2, 5],
    ['5 ± 0 Pa', 'quantity/uncertainty', 3, 8],
    ['5 ± -1 Pa', 'quantity/uncertainty', 3, 9],
    ['5 ± Pa', 'quantity/syntax', 4, 6],
    ['5 L ± 1 kg', 'quantity/uncertainty', 5, 10],
    ['3.1 % ± 1 %', 'quantity/uncertainty', 7, 11],
    ['20 °C ± 1 %', 'quantity/uncertainty', 7, 11],
    ['5 ± 1 Pa (exact)', 'quantity/uncertainty', 8, 16],
    ['5 Pa (k=2)', 'quantity/uncertainty', 4, 10],
    ['5 ± 1 Pa (k=0)', 'quantity/uncertainty', 8, 14],
    ['5 ± 1 Pa (about)', 'quantity/uncertainty', 9, 16],
    ['5.0(3) ± 1 Pa', 'quantity/uncertainty', 13, 13],
  ])('%s', (text, code, start, end) => {
    expect(fault(text)).toMatchObject({ code, start })
    expect(fault(text)?.end).toBe(Math.max(end, start + 1))
  })
})

test('ranges and bounds', () => {
  expect(parseRange('-5 kPa .. 0 kPa')).toMatchObject({
    ok: true,
    value: { low: { value: -5000 }, high: { value: 0 } },
  })
  expect(parseRange('-5 .. 0 kPa')).toMatchObject({
    ok: true,
    value: { low: { value: -5000 }, high: { value: 0 } },
  })
  expect(parseRange('0.5..1.5 bar')).toMatchObject({
    ok: true,
    value: { low: { value: 50000 }, high: { value: 150000 } },
  })
  expect(parseAtMost('<= 2 Pa/h')).toMatchObject({ ok: true, value: { value: 2 / 3600 } })
  expect(parseRange('0 kPa .. -5 kPa')).toMatchObject({ ok: false, error: [{ code: 'quantity/range' }] })
  expect(parseRange('0 kPa .. 5 K')).toMatchObject({ ok: false, error: [{ code: 'quantity/range' }] })
  expect(parseRange('0 kPa .. 5 kPaa')).toMatchObject({
    ok: false,
    error: [{ code: 'unit/unknown', start: 11, end: 15 }],
  })
  expect(parseAtMost('5 Pa')).toMatchObject({ ok: false, error: [{ code: 'quantity/range' }] })
})

describe('accuracy of an instrument', () => {
  const pressure = KINDS.pressure.dim
  const read = (text: string, span: number | null = 10_000) => {
    const result = parseAccuracy(text, span, pressure)
    if (!result.ok) throw new Error(result.error[0]?.message)
    return result.value
  }
  test('GUM 4.3.7, example 2: limits of reading and range; here gain and offset apart', () => {
    const { gain, offset, shape } = read('± (14e-4 % reading + 2e-4 % span)', 1)
    expect(gain).toBeCloseTo(14e-6 / Math.sqrt(3), 15)
    expect(offset).toBeCloseTo(2e-6 / Math.sqrt(3), 15)
    expect(shape).toBe('rectangular')
    // The example adds the two half-widths at 0.928571 V: a = 15.0 µV, u = 8.7 µV.
    expect((gain * 0.928571 + offset) * 1e6).toBeCloseTo(8.66, 2)
  })
  test('± 2 Pa, a coverage factor, mixed terms', () => {
    expect(read('± 2 Pa')).toMatchObject({ gain: 0, offset: 2 / Math.sqrt(3), shape: 'rectangular' })
    expect(read('± 1 % span (k=2)')).toMatchObject({ gain: 0, offset: 50, shape: 'normal' })
    expect(read('± (1 % reading + 0.02 hPa) (limits)').offset).toBeCloseTo(2 / Math.sqrt(3), 12)
  })
  test.each(['± 1 %', '2 Pa', '± 2 K', '± (1 % reading', '± 1 % of what', '± 2 Pa (exact)', '± -2 Pa', '±'])(
    '%s',
    (text) => {
      expect(parseAccuracy(text, 10_000, pressure).ok).toBe(false)
    },
  )
  test('a share of a span that is not known', () =>
    expect(parseAccuracy('± 1 % span', null, pressure).ok).toBe(false))
})

test('property: one quantity in any unit of its dimension is one value in SI', () => {
  const pairs = unitNames().flatMap((name) => {
    const unit = stated(`1 ${name}`).unit
    return unit.offset === 0 ? [unit] : []
  })
  fc.assert(
    fc.property(
      fc.constantFrom(...pairs),
      fc.constantFrom(...pairs),
      fc.integer({ min: 1, max: 99_999 }),
      (a, b, n) => {
        if (a.dim.join() !== b.dim.join()) return
        const inB = (toSI(n, a) / b.factor).toPrecision(17)
        expect(stated(`${inB} ${b.text}`).value / stated(`${n} ${a.text}`).value).toBeCloseTo(1, 12)
      },
    ),
    { numRuns: 2000 },
  )
})

test('property: no text makes it throw, and every fault lies in the text', () => {
  const letters = fc.string({ unit: fc.constantFrom(...'0123456789.,+-±()%eE kPaLNm°CuK=/·') })
  fc.assert(
    fc.property(fc.oneof(fc.string(), letters), (text) => {
      for (const result of [parseStated(text), parseRange(text), parseAtMost(text)]) {
        if (result.ok) continue
        for (const { start, end } of result.error) {
          expect(start).toBeGreaterThanOrEqual(0)
          expect(end).toBeLessThanOrEqual(text.length + 6)
        }
      }
    }),
    { numRuns: 2000 },
  )
})
