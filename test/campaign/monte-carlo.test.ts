/**
 * A card that asks for Monte Carlo. Scale within ± 0.5 N, rectangular and nothing else of weight: for a held peak F the
 * load was 100 N or more with P = (F − 99.5 N)/1 N, where a normal of the same u says Φ((F − 100 N)·√12/1 N). The target
 * lies lower: whether that was reached is a condition of the method, which goes by first order.
 */
import { describe, expect, it } from 'vitest'
import type { Run } from '../../src/campaign/types.ts'
import { expanded, standardUncertainty } from '../../src/quantity/quantity.ts'
import type { Quantity } from '../../src/quantity/types.ts'
import { campaignOf, card, run, scale } from './small.ts'

const readings = (peak: number): string =>
  `|\n  time  load\n  s     N\n  0     0.0000\n  10    ${peak.toFixed(4)}\n  20    ${peak.toFixed(4)}\n  30    0.0000`

const pull = (day: string, peak: number, more: Record<string, string> = {}) =>
  run(day, peak, { readings: readings(peak), ...more })
const LIMITS = scale({ resolution: '0.0001 N', linearity: '± 0.0001 N' })
const LOWER = {
  given: '{target: 90 N, hold: 5 s}',
  criteria: '{enough: {accept: sustained_peak >= 100 N, why: invented}}',
}
const PLAIN = card(LOWER)
const ASKED = card({ ...LOWER, uncertainty: 'monte-carlo' })

const only = (peak: number, ...more: Readonly<Record<string, string>>[]): Run =>
  campaignOf(LIMITS, PLAIN, pull('2026-03-01', peak), ...more).runs[0] as Run
const termOf = (of: Run) => of.judgements[0]?.terms[0]
const peakOf = (of: Run) => of.computed?.measures.sustained_peak as Quantity

describe('one run', () => {
  it('passes at P 0.96, which first order takes for 0.944', () => {
    const drawn = only(100.46, ASKED)
    expect(termOf(drawn)?.probability).toBeCloseTo(0.96, 2)
    expect(drawn.verdict).toBe('pass')
    const first = only(100.46)
    expect(termOf(first)?.probability).toBeCloseTo(0.9445, 3)
    expect(first.verdict).toBe('undetermined')
  })
  it('is undetermined at P 0.90 and fails at 0.02', () => {
    expect(only(100.4, ASKED).verdict).toBe('undetermined')
    expect(termOf(only(99.52, ASKED))?.probability).toBeCloseTo(0.02, 2)
    expect(only(99.52, ASKED).verdict).toBe('fail')
  })
  it('shows u and interval of the draws: 0.5/√3 and 0.95 of the width; the budget stays that of the parts', () => {
    const peak = peakOf(only(100.46, ASKED))
    expect(standardUncertainty(peak)).toBeCloseTo(0.5 / Math.sqrt(3), 2)
    expect(expanded(peak)?.U).toBeCloseTo(0.95 * 0.5, 2)
    expect(peak.parts).toEqual(peakOf(only(100.46)).parts)
    expect(peak.simulated?.draws).toBeGreaterThanOrEqual(20_000)
  })
  it('comes out the same to the last bit each time', () => {
    expect(peakOf(only(100.46, ASKED)).simulated).toEqual(peakOf(only(100.46, ASKED)).simulated)
  })
  it('carries derived values along, with what they share: a difference of the same thing has no uncertainty', () => {
    const twice = {
      derive: '{square: sustained_peak * sustained_peak, nothing: sustained_peak - sustained_peak}',
    }
    const derived =
      only(100.46, card({ ...LOWER, uncertainty: 'monte-carlo', ...twice })).computed?.derived ?? {}
    // For a rectangular of half-width h about 100.46 N: u(x²) = √(4m²h²/3 + 4h⁴/45).
    const [m, h] = [100.46, 0.5]
    expect(standardUncertainty(derived.square as Quantity)).toBeCloseTo(
      Math.sqrt((4 * m * m * h * h) / 3 + (4 * h ** 4) / 45),
      0,
    )
    expect(standardUncertainty(derived.nothing as Quantity)).toBe(0)
  })
  it('stays undetermined where an accuracy is not known', () => {
    const vague = only(100.46, ASKED, scale({ accuracy: undefined }))
    expect(vague.verdict).toBe('undetermined')
    expect(termOf(vague)?.probability ?? null).toBeNull()
  })
})

describe('pooled runs', () => {
  it('share the scale: two peaks of 100.3 and 100.62 N are 100.46 N with P 0.96, not the 0.997 of two scales', () => {
    const campaign = campaignOf(
      LIMITS,
      ASKED,
      pull('2026-03-01', 100.3),
      pull('2026-03-02', 100.62, { witness: 'cy' }),
    )
    const [round] = campaign.cards[0]?.rounds ?? []
    expect(round?.runs.length).toBe(2)
    const term = round?.judgements[0]?.terms[0]
    expect(term?.value.value).toBeCloseTo(100.46, 6)
    expect(term?.tolerance).toBeGreaterThan(0)
    expect(term?.probability).toBeCloseTo(0.96, 2)
  })
})
