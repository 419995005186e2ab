import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { functions } from '../../src/methods/circuit-stiffness/functions.ts'
import { call, DEG, FT, KT, near, refusal } from './call.ts'

const ofCircuit = (name: string, ...args: number[]) => Number(functions[name]?.evaluate(...args))

describe('helix of the wing tips', () => {
  // Worked apart: Cl_δ 0.15/rad, Cl_p −0.45, 15°, 120 kt, 9 m give 0.08726646 and 68.59259 °/s; 0.07 needs 55.02092 °/s.
  test('120 kt, 9 m', () => {
    near(call('helix_angle', 68.59259 * DEG, 120 * KT, 9), 0.08726646, 1e-6)
    near(call('roll_rate_of_helix', 0.07, 120 * KT, 9), 55.02092 * DEG, 1e-6)
    near(call('roll_rate_of_helix', 0.07, 44.704, 33 * FT), 35.65071 * DEG, 1e-6)
  })

  test('the helix of a steady roll is −(Cl_δ/Cl_p)·δ, whatever speed and span', () => {
    const range = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(range(10, 150), range(4, 25), range(-0.4, 0.4), (speed, span, delta) => {
        const rate = ofCircuit('roll_rate', 0.15, -0.45, speed, span, delta)
        expect(call('helix_angle', rate, speed, span)).toBeCloseTo(delta / 3, 12)
      }),
    )
  })

  // K 500, 1000, 2000 N·m/rad against 192.5748 N·m/rad of air: 0.7219437, 0.8385218, 0.9121696 of the rigid helix.
  test.each([
    [500, 0.7219437],
    [1000, 0.8385218],
    [2000, 0.9121696],
  ])('a circuit of %d N·m/rad leaves %d of it', (stiffness, kept) => {
    const share = ofCircuit('deflection_kept', stiffness, 192.5748)
    const rate = ofCircuit('roll_rate', 0.15, -0.45, 120 * KT, 9, 15 * DEG * share)
    near(call('helix_angle', rate, 120 * KT, 9), 0.08726646 * kept, 1e-6)
  })

  test('no speed or span is refused in words', () => {
    expect(refusal('helix_angle', 1, 0, 9)).toMatch(/speed/)
    expect(refusal('helix_angle', 1, 50, 0)).toMatch(/span/)
    expect(refusal('roll_rate_of_helix', 0.07, 50, 0)).toMatch(/span/)
  })
})

/** K N·m/rad, S m², c m, CL_ξ, Cm_ξ, CL_α per rad: the worked section; its aerodynamic centre lies 0.25 c ahead. */
const SECTION = [60_000, 1.8, 1.2, 2.5, -0.75, 5.73, 1.225] as const

describe('reversal and what is left of an aileron', () => {
  test('the worked section reverses at 162.4268 m/s', () => {
    near(call('reversal_speed', ...SECTION), 162.4268, 1e-6)
  })

  // The textbook’s twist θ/ξ = ½ρV²·S·c·(CL_ξ·e + Cm_ξ)/(K − ½ρV²·S·c·e·CL_α), worked apart for e = 0.25:
  // lift ratio (CL_α·θ/ξ + CL_ξ)/CL_ξ. At the reversal speed it is 0, below it the function is on the safe side.
  const liftRatio = (speed: number, e: number): number => {
    const [K, S, c, lift, pitch, slope, density] = SECTION
    const qSc = 0.5 * density * speed ** 2 * S * c
    const twist = (qSc * (lift * e + pitch)) / (K - qSc * e * slope)
    return (slope * twist + lift) / lift
  }
  test.each([
    [60, 0.9743398, 0.8635458],
    [80, 0.9493249, 0.7574147],
    [100, 0.9076595, 0.6209605],
  ])('at %d m/s %d of the lift is left, the function says %d', (speed, ratio, simple) => {
    near(liftRatio(speed, 0.25), ratio, 1e-6)
    const left = call('aileron_effectiveness', speed, call('reversal_speed', ...SECTION))
    near(left, simple, 1e-5)
    expect(left).toBeLessThan(ratio)
    near(left, liftRatio(speed, 0), 1e-12)
  })
  test('at the reversal speed nothing is left, wherever the axis of twist', () => {
    const reversal = call('reversal_speed', ...SECTION)
    for (const e of [0, 0.1, 0.25]) expect(liftRatio(reversal, e)).toBeCloseTo(0, 12)
    expect(call('aileron_effectiveness', reversal, reversal)).toBe(0)
    expect(call('aileron_effectiveness', 1.1 * reversal, reversal)).toBeLessThan(0)
  })

  // A published curve of a fighter at 4,000 ft (NACA Report 868, second-hand) reverses at 545 mph; worked apart.
  test('400 and 300 of 545 mph leave 0.4613248 and 0.6969952', () => {
    near(call('aileron_effectiveness', 400, 545), 0.4613248, 1e-6)
    near(call('aileron_effectiveness', 300, 545), 0.6969952, 1e-6)
  })

  test('what cannot reverse is refused in words', () => {
    expect(refusal('reversal_speed', 60_000, 1.8, 1.2, 2.5, 0, 5.73, 1.225)).toMatch(/Cm_xi/)
    expect(refusal('reversal_speed', 0, 1.8, 1.2, 2.5, -0.75, 5.73, 1.225)).toMatch(/stiffness/)
    expect(refusal('reversal_speed', 60_000, 1.8, 1.2, 0, -0.75, 5.73, 1.225)).toMatch(/lift/)
    expect(refusal('aileron_effectiveness', 10, 0)).toMatch(/reversal/)
  })
})
