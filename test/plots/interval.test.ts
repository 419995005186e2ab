/** The small drawing of a result against its limits. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawInterval } from '../../src/plots/interval.ts'
import type { Against } from '../../src/views/view.ts'

const against = (more: Partial<Against>): Against => ({
  value: 2,
  U: 1,
  limits: [6],
  direction: 'below',
  style: 'pass',
  words: '',
  ...more,
})

describe('the interval against its limit', () => {
  it('refuses above a limit that is to be stayed below', () => {
    const drawing = drawInterval(against({}), 200, 4)
    const [limit = 0] = drawing.limits
    expect(drawing.refused).toEqual([{ from: limit, to: 196 }])
    expect(drawing.high).toBeLessThan(limit)
  })

  it('refuses on both sides of an interval', () => {
    const drawing = drawInterval(against({ limits: [1, 3], direction: 'between' }), 200, 4)
    const [low = 0, high = 0] = drawing.limits
    expect(drawing.refused).toEqual([
      { from: 4, to: low },
      { from: high, to: 196 },
    ])
  })

  it('marks zero only where it lies on the strip', () => {
    expect(drawInterval(against({ value: 0.1, U: 0.3, limits: [1.5] }), 200, 4).zero).not.toBeNull()
    expect(drawInterval(against({ value: 100, U: 1, limits: [110] }), 200, 4).zero).toBeNull()
  })

  it('keeps the order of numbers and stays within the strip, whatever they are', () => {
    const number = fc.double({ min: -1e9, max: 1e9, noNaN: true })
    fc.assert(
      fc.property(number, fc.double({ min: 0, max: 1e9, noNaN: true }), number, (value, U, limit) => {
        const drawing = drawInterval(against({ value, U, limits: [limit] }), 200, 4)
        const all = [drawing.low, drawing.value, drawing.high, ...drawing.limits]
        expect(all.every((x) => Number.isFinite(x) && x >= 4 && x <= 196)).toBe(true)
        expect(drawing.low).toBeLessThanOrEqual(drawing.value)
        expect(drawing.value).toBeLessThanOrEqual(drawing.high)
        if (value < limit) expect(drawing.value).toBeLessThanOrEqual(drawing.limits[0] ?? 0)
      }),
    )
  })
})
