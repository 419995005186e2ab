import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { call, DEG, near, refusal } from './call.ts'

const head = (density: number, n: readonly number[], d: readonly number[]) =>
  call('fluid_head_axes', density, ...[0, 1, 2].flatMap((i) => [n[i] ?? 0, d[i] ?? 0]))

const any = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true })
const triple = (limit: number) => fc.tuple(any(limit), any(limit), any(limit))

describe('head under load factors along three axes', () => {
  test('straight down it is the head of a column', () => {
    near(head(720, [0, 0, 3.8], [0.4, 1.5, 0.25]), call('fluid_head', 720, 3.8, 0.25), 1e-12)
  })

  test('along the span it is the head of a column as long as the tank', () => {
    near(head(720, [0, 0.5, 0], [0, 1.5, 0.25]), call('fluid_head', 720, 0.5, 1.5), 1e-12)
  })

  // 46 CFR 154.407(a): a·Z·Y, a the dimensionless acceleration along β, Z the liquid height over the point in that
  // direction, Y the specific weight. Z is worked out apart, by turning the tank until the acceleration points down.
  test('46 CFR 154.407: the acceleration times the height in its direction', () => {
    fc.assert(
      fc.property(any(0.6), any(6), any(2), any(1), (bank, n, outboard, down) => {
        const [sin, cos] = [Math.sin(bank), Math.cos(bank)]
        const height = outboard * sin + down * cos
        const expected = 720 * 9.80665 * n * height
        expect(head(720, [0, n * sin, n * cos], [0, outboard, down])).toBeCloseTo(expected, 6)
      }),
    )
  })

  test('it does not depend on how the axes are turned about the vertical', () => {
    fc.assert(
      fc.property(triple(9), triple(2), any(3), (n, d, turn) => {
        const [sin, cos] = [Math.sin(turn), Math.cos(turn)]
        const turned = ([a, b, c]: readonly [number, number, number]) => [
          a * cos - b * sin,
          a * sin + b * cos,
          c,
        ]
        expect(head(720, turned(n), turned(d))).toBeCloseTo(head(720, n, d), 5)
      }),
    )
  })

  test('a full tank in a slip of 20°: its tip sees three times what it sees level', () => {
    const slip = head(720, [0, Math.sin(20 * DEG), Math.cos(20 * DEG)], [0, 1.5, 0.25])
    near(slip, 720 * 9.80665 * (0.3420201 * 1.5 + 0.9396926 * 0.25), 1e-6)
    expect(slip / call('fluid_head', 720, 1, 0.25)).toBeCloseTo(2.992, 3)
  })

  test('a point above the vent is under suction, and no density is refused', () => {
    expect(head(720, [0, 0, 1], [0, 0, -0.25])).toBeLessThan(0)
    expect(refusal('fluid_head_axes', 0, 0, 0, 0, 0, 1, 1)).toMatch(/density/)
  })
})
