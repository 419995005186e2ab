/** Standard atmosphere both ways against the table, and airspeed against values of the compressible relation. */
import { describe, expect, test } from 'vitest'
import { airspeedOf, altitudeAt, impactPressure, pressureAt } from '../../../src/methods/static-leak/air.ts'
import { column, readTable, relativeError } from '../../published/data.ts'

const FOOT = 0.3048
const KNOT = 1852 / 3600

describe('U.S. Standard Atmosphere 1976, table to 11 km', () => {
  const rows = readTable('isa_1976').filter(
    (row) => row.row_kind === 'geopotential_m' && Number(row.geopotential_m) <= 11_000,
  )
  const heights = column(rows, 'geopotential_m')
  const pressures = column(rows, 'p_Pa')
  // The table's gas constant and that of ISO 2533 differ by two parts in a million.
  test.each(heights.map((h, k) => [h, pressures[k] ?? Number.NaN]))('%f m is %f Pa', (h, p) => {
    expect(relativeError(pressureAt(h), p)).toBeLessThan(4e-6)
    expect(Math.abs(altitudeAt(p) - h)).toBeLessThan(0.03)
  })
  test('90 000 Pa is 3243.113 ft', () => expect(altitudeAt(90_000) / FOOT).toBeCloseTo(3243.113, 2))
  test('28.8557 inHg is 1000 ft', () =>
    expect(altitudeAt(28.8557 * 3386.388640341) / FOOT).toBeCloseTo(1000, 0))
})

describe('impact pressure, q_c = p₀((1 + 0.2 (V/a₀)²)^3.5 − 1), recomputed apart', () => {
  test.each([
    [50, 405.8292],
    [100, 1630.283],
    [140, 3212.899],
    [150, 3694.379],
    [200, 6633.5455],
  ])('%f kt is %f Pa', (v, q) => {
    expect(relativeError(impactPressure(v * KNOT), q)).toBeLessThan(1e-6)
    expect(airspeedOf(q) / KNOT).toBeCloseTo(v, 4)
  })
  test('FAA AC 43.13-1B, 12-59, rounded up: 150 kt is 1.1 inHg, 14.9 inH2O', () => {
    expect(Math.ceil((impactPressure(150 * KNOT) / 3386.389) * 10) / 10).toBe(1.1)
    expect(Math.ceil((impactPressure(150 * KNOT) / 249.08891) * 10) / 10).toBe(14.9)
  })
  test('slow air is incompressible: ½ ρ₀ V²', () => {
    expect(relativeError(impactPressure(1), 0.5 * 1.225)).toBeLessThan(1e-5)
  })
})
