import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { call, FT, KT, near, refusal } from './call.ts'

describe('equivalent and true airspeed', () => {
  // √σ of the ICAO standard atmosphere as a textbook of flight theory for pilots prints it, four digits, by altitude in ft.
  test.each([
    [1000, 0.9854],
    [5000, 0.9283],
    [10_000, 0.8593],
    [20_000, 0.7299],
    [30_000, 0.6117],
    [40_000, 0.4962],
  ])('at %d ft the ratio is %d', (altitude, ratio) => {
    const density = call('air_density', altitude * FT)
    expect(call('equivalent_airspeed', 1, density)).toBeCloseTo(ratio, 4)
    expect(call('true_airspeed', ratio, density)).toBeCloseTo(1, 3)
  })

  test('at sea-level density they are one, and in air of a quarter of it the true one is twice as fast', () => {
    expect(call('equivalent_airspeed', 60, 1.225)).toBe(60)
    near(call('true_airspeed', 60, 1.225 / 4), 120, 1e-15)
  })

  test('both have one dynamic pressure, and the one undoes the other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: -2000, max: 20_000, noNaN: true }),
        (v, altitude) => {
          const density = call('air_density', altitude)
          const equivalent = call('equivalent_airspeed', v, density)
          near(call('dynamic_pressure', equivalent), call('dynamic_pressure_at', v, density), 1e-12)
          near(call('true_airspeed', equivalent, density), v, 1e-12)
        },
      ),
    )
  })

  // Compressible impact pressure (isentropic, γ = 1.4) as an airspeed indicator is scaled, worked out here.
  test('an indicator without error shows 0.4 kt too much at 150 kt and 10,000 ft', () => {
    const [pressure, density] = [call('air_pressure', 3048), call('air_density', 3048)]
    const impact = 101_325 * ((1 + 0.2 * ((150 * KT) / 340.294) ** 2) ** 3.5 - 1)
    const machSquared = 5 * ((impact / pressure + 1) ** (2 / 7) - 1)
    const equivalent = call(
      'equivalent_airspeed',
      Math.sqrt((machSquared * 1.4 * pressure) / density),
      density,
    )
    expect(150 - equivalent / KT).toBeCloseTo(0.4, 1)
  })

  test('no air is refused in words', () => {
    expect(refusal('equivalent_airspeed', 50, 0)).toMatch(/greater than 0/)
    expect(refusal('true_airspeed', 50, -1)).toMatch(/greater than 0/)
  })
})
