import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { toSI, toUnit } from '../../src/quantity/convert.ts'
import { dimensionUnit, multiplyDimension, sameDimension } from '../../src/quantity/dimension.ts'
import { kindUnit } from '../../src/quantity/display.ts'
import { KINDS, type Kind } from '../../src/quantity/kinds.ts'
import { nearest } from '../../src/quantity/nearest.ts'
import { meantInstead } from '../../src/quantity/unit-hints.ts'
import { unitNames } from '../../src/quantity/unit-names.ts'
import { parseUnit } from '../../src/quantity/unit-text.ts'

function unit(text: string) {
  const result = parseUnit(text)
  if (!result.ok) throw new Error(`${text}: ${result.error[0]?.message}`)
  return result.value
}
function fault(text: string) {
  const result = parseUnit(text)
  if (result.ok) throw new Error(`${text} was read as a unit`)
  return result.error[0]
}

describe('ways of writing one unit (SI Brochure 5.2 for products and quotients)', () => {
  test.each([
    ['lbf·in/deg', 'lbf in/deg', 'lbf*in/deg', 'lbf·in/°', 'in·lbf / deg'],
    ['cm³/min', 'cm^3/min', 'cm3/min', 'cc/min', 'mL/min'],
    ['N·m/rad', 'N*m/rad', 'Nm/rad', 'N m rad⁻¹', 'N·m·rad^-1', 'N·m·rad^−1'],
    ['m/s²', 'm/s^2', 'm/s2', 'm s⁻²', 'm/s/s'],
    ['µm', 'μm', 'um'],
    ['US gal', 'USgal', 'gal'],
    ['delta degC', 'delta °C', 'Δ°C', 'K'],
    ['1/(kPa·min)', '1/kPa/min', 'kPa⁻¹ min⁻¹'],
    ['inH2O', 'inH₂O'],
  ])('%s', (first, ...others) => {
    for (const other of others) {
      expect(unit(other).dim, other).toEqual(unit(first).dim)
      expect(unit(other).factor / unit(first).factor, other).toBeCloseTo(1, 14)
    }
  })
})

test('same dimension is not same meaning: J and kW·h are energies, N·m and lbf·ft moments', () => {
  expect(['J', 'kWh', 'kW·h', 'W s'].map((text) => unit(text).energy)).toEqual([true, true, true, true])
  expect(['N·m', 'lbf·ft', 'Pa·m³', 'W'].map((text) => unit(text).energy)).toEqual([
    false,
    false,
    false,
    false,
  ])
})

test('per radian is not per degree', () => {
  expect(unit('N·m/deg').factor / unit('N·m/rad').factor).toBeCloseTo(180 / Math.PI, 12)
  expect(sameDimension(unit('lbf/in').dim, unit('lbf/deg').dim)).toBe(false)
})

describe('what is no unit', () => {
  test.each([
    ['kts', 'unit/unknown', 0, 3, 'kt'],
    ['C', 'unit/unknown', 0, 1, 'degC'],
    ['lbs', 'unit/unknown', 0, 3, 'lbf'],
    ['N·mm/dge', 'unit/unknown', 5, 8, 'deg'],
    ['Kpa', 'unit/unknown', 0, 3, 'kPa'],
    ['nm', 'unit/unknown', 0, 2, 'nmi'],
    ['"', 'unit/unknown', 0, 1, 'in'],
    ['°C/min', 'unit/temperature', 0, 2, 'K'],
  ])('%s', (text, code, start, end, near) => {
    expect(fault(text)).toMatchObject({ code, start, end })
    expect(fault(text)?.expected).toContain(near)
  })
  test.each(['', 'm/s·kg', 'in-lbf', 'N·', '/s', '(m', 'm^', '5', 'm$'])('%s', (text) => {
    expect(fault(text)?.code).toMatch(/^unit\/(syntax|unknown)$/)
    expect(fault(text)?.end).toBeGreaterThan(fault(text)?.start ?? 0)
  })
  test('leading blanks move the place', () => expect(fault('  kts')).toMatchObject({ start: 2, end: 5 }))
})

test('every kind has a unit of its dimension, with factor 1', () => {
  for (const kind of (Object.keys(KINDS) as Kind[]).filter((each) => each !== 'text')) {
    expect(kindUnit(kind), kind).toMatchObject({ factor: 1, offset: 0 })
    expect(sameDimension(kindUnit(kind).dim, KINDS[kind].dim), kind).toBe(true)
  }
})

test('1.5 in is 38.1 mm to the last bit, as a reading on the limit must be', () => {
  expect(toSI(1.5, unit('in'))).toBe(toSI(38.1, unit('mm')))
  expect(toSI(0.3, unit('mm'))).toBe(0.0003)
  expect(toUnit(toSI(6, unit('cm³/min')), unit('cm³/min'))).toBe(6)
})

test('nearest names: at most four, the closest first, none for a far one', () => {
  expect(nearest('stifness', ['stiffness', 'friction', 'surface_stiffness'])).toEqual(['stiffness'])
  expect(nearest('ab', ['ac', 'ad', 'ae', 'af', 'ag', 'ab2']).length).toBe(4)
  expect(nearest('temperature', ['baro'])).toEqual([])
})

test('a mass where a force is needed gets a word about it', () => {
  expect(meantInstead(unit('kg'), KINDS.force.dim)).toContain('kgf')
  expect(meantInstead(unit('lbf/in'), KINDS['angular-stiffness'].dim)).toContain('lbf·in/deg')
  expect(meantInstead(unit('Pa'), KINDS.force.dim)).toBeUndefined()
})

describe('properties', () => {
  const names = unitNames().filter((name) => unit(name).offset === 0)
  test('a value there and back is the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...unitNames()),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (name, value) => {
          const back = toUnit(toSI(value, unit(name)), unit(name))
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(value), 1000))
        },
      ),
    )
  })
  test('the dimension of a product is the sum, its factor the product', () => {
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.constantFrom(...names), (a, b) => {
        const product = unit(`${a}·${b}`)
        expect(sameDimension(product.dim, multiplyDimension(unit(a).dim, unit(b).dim))).toBe(true)
        expect(product.factor / (unit(a).factor * unit(b).factor)).toBeCloseTo(1, 12)
        expect(unit(`${a}/${b}`).factor / (unit(a).factor / unit(b).factor)).toBeCloseTo(1, 12)
      }),
    )
  })
  test('the text of a dimension reads as that dimension', () => {
    const exponent = fc.integer({ min: -4, max: 4 })
    fc.assert(
      fc.property(fc.tuple(exponent, exponent, exponent, exponent, exponent, exponent), (dim) => {
        expect(sameDimension(unit(dimensionUnit(dim)).dim, dim)).toBe(true)
      }),
    )
  })
  test('no text makes it throw', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'mNPas/·*()^23²°C -%1') })),
        (text) => {
          const result = parseUnit(text)
          if (!result.ok) expect(result.error[0]?.message).toBeTruthy()
        },
      ),
    )
  })
})
