/**
 * Check values of the ground gust and pilot force rules: 14 CFR 23.415 and 23.397 as before amendment 64.
 * The rules' numbers were read in opened copies of the eCFR; the worked cases were computed apart in ft, lb and s
 * with ρ₀ = 0.0023769 slug/ft³ (= 1.225004 kg/m³), so a relative tolerance of 1e-4 where a density is in, 1e-5 else.
 */
import { describe, expect, test } from 'vitest'
import { FUNCTIONS } from '../../src/functions/index.ts'
import { call, near } from '../functions/call.ts'

const FT = 0.3048
const LB = 0.45359237
const LBF = 4.4482216152605
const PSF = LBF / FT ** 2

describe('14 CFR 23.415: ground gust', () => {
  // Cases A to D: weight lb, wing area ft², design speed ft/s, dynamic pressure lbf/ft².
  test.each([
    ['A', 1320, 120, 63.02272, 4.720361],
    ['B', 1600, 128, 66.2188, 5.211269],
    ['C', 2550, 160, 72.88583, 6.313455],
    ['D, at the cap of 88 ft/s', 3600, 130, 88, 9.203357],
  ])('case %s', (_, weight, area, speed, pressure) => {
    const v = call('gust_speed', (weight * LB) / (area * FT * FT))
    near(v / FT, speed, 1e-6)
    near(call('dynamic_pressure', v) / PSF, pressure, 1e-4)
  })

  test('the cap starts to act at 25.27472 lb/ft²', () => {
    const at = (loading: number) => call('gust_speed', (loading * LB) / (FT * FT)) / FT
    expect(at(25.27471)).toBeLessThan(88)
    near(at(25.27472), 88, 1e-6)
    expect(at(40)).toBeCloseTo(88, 12)
  })

  // Case A, q = 4.720361 lbf/ft²: K by table, chord ft, area ft², hinge moment lbf·ft.
  test.each([
    ['aileron', 'locked_mid', 0.85, 6.4, 19.25907],
    ['aileron', 'full_throw', 0.85, 6.4, 12.83938],
    ['elevator', 'full_down', 1.1, 11.2, 43.61614],
    ['elevator', 'full_up', 1.1, 11.2, -43.61614],
    ['rudder', 'neutral', 1.25, 6.5, 28.7647],
    ['rudder', 'full_throw', 1.25, 6.5, 28.7647],
  ])('hinge moment of %s, %s', (surface, position, chord, area, moment) => {
    const K = call('gust_factor', surface, position)
    const H = call('gust_hinge_moment', K, chord * FT, area * FT * FT, 4.720361 * PSF)
    near(H / (LBF * FT), moment, 1e-6)
  })

  test('case D elevator at the cap: 134.5991 lbf·ft', () => {
    const q = call('dynamic_pressure', call('gust_speed', (3600 * LB) / (130 * FT * FT)))
    near(call('gust_hinge_moment', 0.75, 1.3 * FT, 15 * FT * FT, q) / (LBF * FT), 134.5991, 1e-4)
  })

  test('in SI: 600 kg on 11.5 m² gives 18.99719 m/s, 221.0470 Pa and the moments of four surfaces', () => {
    const v = call('gust_speed', 600 / 11.5)
    const q = call('dynamic_pressure', v)
    near(v, 18.99719, 1e-6)
    near(q, 221.047, 1e-4)
    near(call('gust_hinge_moment', 0.75, 0.25, 0.55, q), 22.79547, 1e-4)
    near(call('gust_hinge_moment', 0.5, 0.25, 0.55, q), 15.19698, 1e-4)
    near(call('gust_hinge_moment', 0.75, 0.36, 1.05, q), 62.66683, 1e-4)
    near(call('gust_hinge_moment', 0.75, 0.4, 0.6, q), 39.78846, 1e-4)
  })

  test('23.415(c): 65 kt is 684.8726 Pa', () => {
    near(call('dynamic_pressure', (65 * 1852) / 3600), 684.8726, 1e-4)
  })

  test('a position that the rule does not give for the surface is refused, with those that it gives', () => {
    expect(FUNCTIONS.gust_factor?.evaluate('elevator', 'locked_mid')).toMatch(/full_up and full_down/)
    expect(FUNCTIONS.gust_factor?.evaluate('flap', 'neutral')).toMatch(/aileron, elevator, rudder/)
  })
})

describe('14 CFR 23.397(b): pilot forces', () => {
  test.each([
    ['aileron_stick', 298.0308, 177.9289],
    ['elevator_stick', 742.853, 444.8222],
    ['elevator_wheel', 889.6443, 444.8222],
    ['elevator_wheel_one_hand', 444.8222, 444.8222],
    ['rudder', 889.6443, 667.2332],
    ['aileron_wheel_tangential', 278.0139, 222.4111],
  ])('%s at 1,320 lb', (axis, most, least) => {
    near(call('pilot_force_limit', axis, 1320 * LB), most, 1e-6)
    near(call('pilot_force_minimum', axis), least, 1e-6)
  })

  test('maxima grow from 5,000 lb: 179.0240 lbf at 8,000 lb, 1.18 times at 12,500 lb, refused beyond', () => {
    near(call('pilot_force_limit', 'elevator_stick', 8000 * LB) / LBF, 179.024, 1e-6)
    near(call('pilot_force_limit', 'elevator_stick', 5000 * LB) / LBF, 167, 1e-12)
    near(call('pilot_force_limit', 'rudder', 12_500 * LB) / LBF, 236, 1e-9)
    expect(FUNCTIONS.pilot_force_limit?.evaluate('rudder', 12_600 * LB)).toMatch(/12,500 lb/)
    expect(FUNCTIONS.pilot_force_limit?.evaluate('rudder', 0)).toMatch(/greater than 0/)
  })

  test('a wheel of 14 in: 700 in·lbf = 79.08938 N·m; minimum 560 in·lbf', () => {
    near(call('aileron_wheel_couple_limit', 14 * 0.0254, 1320 * LB), 79.08938, 1e-6)
    near(call('aileron_wheel_couple_minimum', 14 * 0.0254), 560 * LBF * 0.0254, 1e-12)
  })
})
