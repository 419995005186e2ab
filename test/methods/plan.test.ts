/** Load steps and guard bands of plans. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { IDEAL } from '../../src/methods/as-shown.ts'
import type { InstrumentModel } from '../../src/methods/method.ts'
import { loadSteps, sureReading } from '../../src/methods/plan.ts'

const gauge = (more: Partial<InstrumentModel> = {}): InstrumentModel => ({
  ...IDEAL,
  ...more,
})

describe('load steps', () => {
  it('rise to the top, end there exactly, and keep apart', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 1e5, noNaN: true }),
        fc.constantFrom(1, 4.4482216152605, 1e-3),
        (x, unit) => {
          const top = x * unit
          const steps = loadSteps(top, unit, 5)
          expect(steps[steps.length - 1]).toBe(top)
          expect(steps.length).toBeGreaterThanOrEqual(4)
          expect(steps.length).toBeLessThanOrEqual(7)
          const gaps = steps.map((step, i) => step - (steps[i - 1] ?? 0))
          const first = gaps[0] ?? 0
          expect(Math.min(...gaps)).toBeGreaterThan(0.29 * first)
          expect(Math.max(...gaps)).toBeLessThan(1.31 * first)
        },
      ),
    )
  })
  it('are round in the unit of the gauge: 3835 N on a scale in lbf', () => {
    const lbf = 4.4482216152605
    expect(loadSteps(862 * lbf, lbf, 5).map((step) => Math.round((step / lbf) * 1e6) / 1e6)).toEqual([
      200, 400, 600, 800, 862,
    ])
  })
})

describe('the reading that makes a load sure', () => {
  it('lies above it by 1.645 standard uncertainties (JCGM 106, 8.3.2.4; table of the normal distribution)', () => {
    expect(sureReading(100, gauge({ offset: 1 }))).toBeCloseTo(101.645, 9)
    expect(sureReading(100, gauge({ gain: 0.01 }))).toBeCloseTo(101.645, 9)
  })
  it('is the load itself on a perfect gauge, and a whole digit on any other', () => {
    expect(sureReading(100, gauge())).toBe(100)
    expect(sureReading(100, gauge({ offset: 1, resolution: 0.5 }))).toBeCloseTo(102, 9)
  })
  it('is not known where the accuracy is not', () => {
    expect(sureReading(100, gauge({ offset: null }))).toBeNull()
  })
})
