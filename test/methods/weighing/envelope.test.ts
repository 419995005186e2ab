/** The polygon: by hand, and against points that are inside by construction. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { crossing, type Envelope, highestMass, limitsAt } from '../../../src/methods/weighing/envelope.ts'

const corners: Envelope = [
  { mass: 300, arm: 1.3 },
  { mass: 450, arm: 1.3 },
  { mass: 600, arm: 1.45 },
  { mass: 600, arm: 1.65 },
  { mass: 300, arm: 1.7 },
]

test('limits by hand: on straight and sloped sides, at corners, on the top edge, outside', () => {
  expect(limitsAt(corners, 400, 1.5)).toEqual({ forward: 1.3, aft: expect.closeTo(1.7 - 0.05 / 3, 12) })
  expect(limitsAt(corners, 525, 1.5)?.forward).toBeCloseTo(1.375, 12)
  expect(limitsAt(corners, 450, 1.5)?.forward).toBeCloseTo(1.3, 12)
  expect(limitsAt(corners, 600, 1.5)?.forward).toBeCloseTo(1.45, 9)
  expect(limitsAt(corners, 600, 1.5)?.aft).toBeCloseTo(1.65, 9)
  expect(limitsAt(corners, 300, 1.5)).toEqual({ forward: 1.3, aft: 1.7 })
  expect(limitsAt(corners, 600.1, 1.5)).toBeNull()
  expect(limitsAt(corners, 299.9, 1.5)).toBeNull()
  expect(highestMass(corners)).toBe(600)
})

test('an envelope with a notch gives the limits on the side where the point is', () => {
  const notched: Envelope = [
    { mass: 300, arm: 1 },
    { mass: 600, arm: 1 },
    { mass: 600, arm: 1.2 },
    { mass: 400, arm: 1.3 },
    { mass: 600, arm: 1.4 },
    { mass: 600, arm: 1.6 },
    { mass: 300, arm: 1.6 },
  ]
  expect(limitsAt(notched, 500, 1.1)).toEqual({ forward: 1, aft: expect.closeTo(1.25, 12) })
  expect(limitsAt(notched, 500, 1.5)).toEqual({ forward: expect.closeTo(1.35, 12), aft: 1.6 })
})

describe('whichever way round and from whichever corner', () => {
  const weights = fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 5, maxLength: 5 })
  test('a mean of the corners is inside, and its mirror beyond a limit is outside', () =>
    fc.assert(
      fc.property(weights, fc.nat(4), fc.boolean(), (shares, start, back) => {
        const turned = [...corners.slice(start), ...corners.slice(0, start)]
        const envelope = back ? turned.toReversed() : turned
        const total = shares.reduce((sum, share) => sum + share, 0)
        const mean = (of: 'mass' | 'arm') =>
          corners.reduce((sum, corner, k) => sum + (corner[of] * (shares[k] ?? 0)) / total, 0)
        const limits = limitsAt(envelope, mean('mass'), mean('arm'))
        expect(limits).not.toBeNull()
        if (!limits) return
        expect(mean('arm')).toBeGreaterThan(limits.forward)
        expect(mean('arm')).toBeLessThan(limits.aft)
        expect(limitsAt(envelope, mean('mass'), limits.aft + 1)).toEqual(limits)
      }),
    ))
})

test('corners out of order are found', () => {
  expect(crossing(corners)).toBeNull()
  const [a, b, c, d, e] = corners as [Envelope[0], Envelope[0], Envelope[0], Envelope[0], Envelope[0]]
  expect(crossing([a, b, d, c, e].map((corner) => corner ?? { mass: 0, arm: 0 }))).not.toBeNull()
})
