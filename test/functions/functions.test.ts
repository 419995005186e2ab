import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { call, near } from './call.ts'

describe('standard atmosphere', () => {
  // U.S. Standard Atmosphere 1976, recomputed from its constants and spot-checked against printed tables.
  const rows = readFileSync(new URL('../published/data/isa_1976.csv', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('geopotential_m,'))
    .map((line) => line.split(',').slice(1).map(Number))

  test('every row of the table', () => {
    expect(rows.length).toBe(17)
    for (const [h = 0, , T = 0, p = 0, rho = 0] of rows) {
      near(call('air_temperature', h), T, 1e-9)
      near(call('air_pressure', h), p, 1e-8)
      near(call('air_density', h), rho, 1e-8)
    }
  })

  // Printed table values for geopotential 11,000 m: 216.650 K, 2.26320e4 Pa, 0.363918 kg/m³.
  test('the printed row at 11 km', () => {
    near(call('air_pressure', 11_000), 22_632.0, 5e-6)
    near(call('air_density', 11_000), 0.363918, 2e-6)
  })

  // Pressure of 100 ft at two levels with g₀/(R·L) = 5.255876, worked apart (a copy with 5.255786 gives 356.0836).
  test('100 ft are 356.090 Pa under 1,000 ft and 306.53 Pa under 6,000 ft', () => {
    const drop = (from: number, to: number) =>
      call('air_pressure', from * 0.3048) - call('air_pressure', to * 0.3048)
    near(drop(900, 1000), 356.09, 3e-6)
    near(drop(5900, 6000), 306.53, 2e-5)
  })

  test('outside −2 km to 20 km a sentence instead of a number', () => {
    expect(FUNCTIONS.air_density?.evaluate(20_001)).toMatch(/outside/)
    expect(FUNCTIONS.air_density?.evaluate(-2001)).toMatch(/outside/)
  })

  test('pressure falls with altitude, and dp/dh = −ρ·g₀ everywhere', () => {
    fc.assert(
      fc.property(fc.double({ min: -1990, max: 19_990, noNaN: true }), (h) => {
        const slope = (call('air_pressure', h + 5) - call('air_pressure', h - 5)) / 10
        expect(Math.abs(slope / (-call('air_density', h) * 9.80665) - 1)).toBeLessThan(1e-5)
      }),
    )
  })
})

describe('dynamic pressure', () => {
  // ½ρ₀V² with ρ₀ = 1.225 kg/m³, computed apart.
  test.each([
    [50, 405.25],
    [60, 583.5601],
    [100, 1621.0002],
    [150, 3647.2503],
    [200, 6484.0006],
  ])('%d kt', (knots, pascal) => {
    near(call('dynamic_pressure', (knots * 1852) / 3600), pascal, 1e-7)
  })

  test('at sea-level density both functions agree', () => {
    near(call('dynamic_pressure_at', 30, 1.225), call('dynamic_pressure', 30), 1e-15)
    expect(FUNCTIONS.dynamic_pressure_at?.evaluate(30, 0)).toMatch(/greater than 0/)
  })
})

describe('fluids', () => {
  const LB_PER_GAL = 0.45359237 / 3.785411784e-3
  const PSI = 6894.757293168

  // p = ρ·g₀·n·h, computed apart: 6.0 lb/US gal is 0.02597403 psi per inch.
  test.each([
    [6.0 * LB_PER_GAL, 3.8, 10, 0.987013],
    [6.0 * LB_PER_GAL, 5.7, 10, 1.480519],
    [6.0 * LB_PER_GAL, 1, 134.75, 3.5],
    [6.7 * LB_PER_GAL, 3.8, 10, 1.102165],
    [6.8 * LB_PER_GAL, 3.8, 10, 1.118615],
  ])('%d kg/m³ at %d g under %d in: %d psi', (density, n, inches, psi) => {
    near(call('fluid_head', density, n, inches * 0.0254) / PSI, psi, 1e-6)
  })
  test.each([
    [720, 3.8, 0.25, 6707.749],
    [720, 5.7, 0.25, 10_061.62],
    [804, 3.8, 0.25, 7490.319],
    [720, 1, 3.399054, 24_000],
  ])('%d kg/m³ at %d g under %d m: %d Pa', (density, n, height, pascal) => {
    near(call('fluid_head', density, n, height), pascal, 1e-6)
  })

  // ASME PCC-2 (2008) appendix II equation, exponent 2/7, ambient 101,000 Pa, computed apart.
  test.each([
    [107_894.76, 0.1, 504.1514],
    [125_131.65, 0.1, 1857.493],
    [114_789.51, 0.06, 618.2304],
    [1_101_000, 1, 1_361_560],
    [2_101_000, 50, 1.522846e8],
    [5_101_000, 200, 1.718816e9],
  ])('energy of gas at %d Pa absolute in %d m³: %d J', (absolute, volume, joule) => {
    near(call('stored_energy', absolute - 101_000, volume), joule, 2e-6)
  })

  test('for a small pressure the energy of gas tends to p·V/k (first term of the series)', () => {
    const p = 10
    near(call('stored_energy', p, 1), p / 1.4, 1e-3)
    expect(call('stored_energy', 0, 1)).toBe(0)
    expect(FUNCTIONS.stored_energy?.evaluate(-1000, 1)).toMatch(/vacuum/)
  })
})

describe('every function', () => {
  test.each(Object.values(FUNCTIONS).map((one) => [one.name, one] as const))('%s', (name, one) => {
    expect(name).toMatch(/^[a-z][a-z0-9_]*$/)
    expect(one.meaning.length).toBeGreaterThan(20)
    expect(one.source).not.toBe('')
    expect(one.example.formula.startsWith(`${name}(`)).toBe(true)
    for (const parameter of one.parameters)
      expect(parameter.kind === 'text').toBe(parameter.words !== undefined)
  })

  test('wrong arguments give a sentence, never NaN and never a throw', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(FUNCTIONS)),
        fc.array(fc.oneof(fc.double(), fc.string(), fc.constantFrom('rudder', 'neutral', 'toString')), {
          maxLength: 5,
        }),
        (one, args) => {
          const result = one.evaluate(...args)
          if (typeof result === 'number') {
            expect(args.length).toBe(one.parameters.length)
            expect(Number.isNaN(result)).toBe(false)
          }
        },
      ),
    )
  })
})
