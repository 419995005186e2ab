/** Shares, angles and loads of belts: worked apart in in and lbf; the split of 14 CFR 29.785(g) was read in the rule. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { call, DEG, IN, LBF, near, refusal } from './call.ts'

test('29.785(g): 60 % to the lap belt, 40 % to the shoulder harness; together all of it', () => {
  expect(call('restraint_share', 'lap')).toBe(0.6)
  expect(call('restraint_share', 'shoulder')).toBe(0.4)
  expect(refusal('restraint_share', 'crotch')).toBe('belt is one of lap, shoulder')
})

test('angles of straps: rise 6 over run 18 is 18.43495°, rise 10 over run 7 is 55.00798°', () => {
  near(call('strap_angle', 18, 6), 18.43495 * DEG, 1e-6)
  near(call('strap_angle', 7, -10), -55.00798 * DEG, 1e-6)
  expect(call('strap_angle', 1, 0)).toBe(0)
  expect(refusal('strap_angle', 0, 1)).toMatch(/square to the load/)
})

describe('loads on anchors', () => {
  /** A strap of unit run at an angle in side view. */
  const anchor = (part: string, load: number, angle: number) =>
    call('anchor_load', part, load * LBF, 2, 1, 0, Math.tan(angle * DEG)) / LBF

  // 9 g on 215 lb: 774 lbf for two shoulder straps, 1161 lbf for the two sides of the lap belt.
  test.each([
    [774, 0, 387],
    [774, 20, 411.8368],
    [774, 30, 446.8691],
    [1161, 45, 820.951],
    [1161, 55, 1012.071],
  ])('%d lbf on two straps at %d°: %d lbf each', (load, angle, tension) => {
    near(anchor('total', load, angle), tension, 1e-6)
  })
  test('two shoulder straps at 30° pull up by 446.8691 lbf together', () => {
    near(2 * anchor('vertical', 774, 30), 446.8691, 1e-6)
  })

  test('components have the signs of the distances and make up the tension; those along carry the load', () => {
    const distance = fc.double({ min: -0.5, max: 0.5, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        distance,
        distance,
        fc.integer({ min: 1, max: 4 }),
        (run, offset, rise, straps) => {
          const part = (name: string) => call('anchor_load', name, 9000, straps, run, offset, rise)
          near(straps * part('along'), 9000, 1e-12)
          near(Math.hypot(part('along'), part('across'), part('vertical')), part('total'), 1e-12)
          expect(Math.sign(part('across'))).toBe(Math.sign(offset))
          expect(Math.sign(part('vertical'))).toBe(Math.sign(rise))
        },
      ),
    )
  })

  test('a strap along the load carries just its share; one square to it none', () => {
    near(call('anchor_load', 'total', 1000, 2, 12 * IN, 0, 0), 500, 1e-12)
    expect(refusal('anchor_load', 'total', 1000, 2, 0, 0, 1)).toMatch(/square to the load/)
  })
  test('half a strap, a pushing strap and an unknown part are refused in words', () => {
    expect(refusal('anchor_load', 'total', 1000, 1.5, 1, 0, 0)).toMatch(/number of straps/)
    expect(refusal('anchor_load', 'total', -1, 2, 1, 0, 0)).toMatch(/only pull/)
    expect(refusal('anchor_load', 'sideways', 1, 2, 1, 0, 0)).toBe(
      'part is one of total, along, across, vertical',
    )
    expect(refusal('anchor_load', 'total', 1, 2, 1, 0, 'x')).toBe('rise is a finite number')
    expect(refusal('anchor_load', 'total', 1)).toBe('expects 6 values')
  })
})
