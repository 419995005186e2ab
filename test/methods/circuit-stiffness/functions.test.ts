/** Check values of the formula functions (aviation.md 8.1 and 8.2; arithmetic from definitions, 7 digits). */
import { describe, expect, test } from 'vitest'
import { functions } from '../../../src/methods/circuit-stiffness/functions.ts'

const call = (name: string, ...args: number[]) => functions[name]?.evaluate(...args) ?? Number.NaN
const relative = (name: string, expected: number, ...args: number[]) =>
  expect(Number(call(name, ...args)) / expected).toBeCloseTo(1, 6)

const DEG = Math.PI / 180
const KT = 1852 / 3600

test('hinge_moment_slope: q 2334.240 Pa, S 0.55 m², c 0.25 m, Ch −0.6/rad give 192.5748 N·m/rad (8.2)', () => {
  relative('hinge_moment_slope', 192.5748, 2334.24, 0.55, 0.25, -0.6)
})

test.each([
  [500, 0.7219437],
  [1000, 0.8385218],
  [2000, 0.9121696],
])('deflection_kept: %d N·m/rad against 192.5748 keeps %d (8.2)', (K, kept) => {
  relative('deflection_kept', kept, K, 192.5748)
})

describe('limits of deflection_kept (derived)', () => {
  test('rigid circuit keeps all; no air keeps all; half at K = h', () => {
    relative('deflection_kept', 1, 1e12, 200)
    relative('deflection_kept', 1, 200, 0)
    relative('deflection_kept', 0.5, 200, 200)
  })
  test('K + h ≤ 0 keeps nothing: a criterion that asks for some fails', () => {
    expect(call('deflection_kept', 200, -200)).toBe(0)
    expect(call('deflection_kept', 200, -300)).toBe(0)
  })
})

describe('speed_for_kept', () => {
  test('1,000 N·m/rad keep half up to 140.6760 m/s (8.2)', () => {
    relative('speed_for_kept', 140.676, 0.5, 1000, 0.55, 0.25, -0.6)
  })
  test('deflection_kept at that speed gives the share back', () => {
    for (const share of [0.2, 0.5, 0.85, 0.99]) {
      const speed = Number(call('speed_for_kept', share, 740, 0.55, 0.25, -0.6))
      const slope = Number(call('hinge_moment_slope', 0.5 * 1.225 * speed ** 2, 0.55, 0.25, -0.6))
      relative('deflection_kept', share, 740, slope)
    }
  })
  test('a share of all, and air that does not centre, are refused in words', () => {
    expect(call('speed_for_kept', 1, 1000, 0.55, 0.25, -0.6)).toMatch(/between 0 and 1/)
    expect(call('speed_for_kept', 0.5, 1000, 0.55, 0.25, 0)).toMatch(/no speed/)
    expect(call('speed_for_kept', 0.5, 0, 0.55, 0.25, -0.6)).toMatch(/positive/)
  })
})

test('roll_rate: Cl_δ 0.15/rad, Cl_p −0.45, 120 kt, 9 m, 15° give 1.197167 rad/s (8.1)', () => {
  relative('roll_rate', 1.197167, 0.15, -0.45, 120 * KT, 9, 15 * DEG)
  // The same ratio multiplies the roll rate: 49.51999, 57.51639, 62.56807 °/s (8.2).
  for (const [K, rate] of [
    [500, 49.51999],
    [1000, 57.51639],
    [2000, 62.56807],
  ] as const) {
    const kept = Number(call('deflection_kept', K, 192.5748))
    relative('roll_rate', rate * DEG, 0.15, -0.45, 120 * KT, 9, 15 * DEG * kept)
  }
})

test('roll_rate refuses a roll damping that is not negative', () => {
  expect(typeof call('roll_rate', 0.15, 0.45, 60, 9, 0.2)).toBe('string')
})
