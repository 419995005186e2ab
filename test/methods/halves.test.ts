import { expect, it } from 'vitest'
import { changeOfSlope, halvesOf } from '../../src/methods/halves.ts'

const x = Float64Array.from({ length: 9 }, (_, i) => i * i)

it('is the slope of the second half less that of the first (two lines of known slope)', () => {
  const y = x.map((value, i) => (i < 4 ? 2 * value + 1 : 5 * value - 3))
  expect(changeOfSlope(x, y)).toBeCloseTo(3, 12)
})

it('comes out of both forms to the last bit, so that a budget rests on the value that is shown', () => {
  const y = x.map((value, i) => 0.1 * value + Math.sin(7 * i))
  expect(changeOfSlope(x, y)).toBe(halvesOf(x, y)?.value)
})

it('is null under five points', () => {
  expect(changeOfSlope(x.subarray(0, 4), x.subarray(0, 4))).toBeNull()
  expect(halvesOf(x.subarray(0, 4), x.subarray(0, 4))).toBeNull()
})
