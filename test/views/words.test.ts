/** Words, dates, numbers and ids as pages show them. */
import { describe, expect, it } from 'vitest'
import type { Moment } from '../../src/format/types.ts'
import type { Term } from '../../src/judge/types.ts'
import type { Quantity, Unit } from '../../src/quantity/types.ts'
import {
  differenceUnit,
  dofText,
  factorText,
  limitText,
  numberText,
  probabilityText,
  unitText,
} from '../../src/views/show.ts'
import { dateWords, listWords, momentWords, monthWords, plural, timeWords } from '../../src/views/words.ts'

const moment = (text: string): Moment => ({
  text,
  epoch: Date.parse(text),
  date: text.slice(0, 10),
  clock: text.slice(11, 16),
})
const litre: Unit = { text: 'L', dim: [3, 0, 0, 0, 0, 0], factor: 0.001, offset: 0, energy: false }
const celsius: Unit = { text: '°C', dim: [0, 0, 0, 0, 1, 0], factor: 1, offset: 273.15, energy: false }
const quantity = (value: number, u: number | null, dof = Number.POSITIVE_INFINITY): Quantity => ({
  value,
  dim: litre.dim,
  parts: u === null ? null : { s: { u, dof, pool: 's', shape: 'normal' } },
  why: u === null ? ['nobody wrote it down'] : [],
})

describe('dates', () => {
  it('are those of the hangar, with its offset, on any machine', () => {
    expect(dateWords('2026-03-04')).toBe('4 March 2026')
    expect(momentWords(moment('2026-03-04T23:30+13:00'))).toBe('4 March 2026, 23:30 +13:00')
    expect(momentWords(moment('2026-03-04T09:12Z'))).toBe('4 March 2026, 09:12 UTC')
    expect(timeWords('2026-03-05T07:01:22+01:00')).toBe('5 March 2026, 07:01')
    expect(monthWords('2026-12')).toBe('December 2026')
  })

  it('that are none stay as they are written', () => {
    expect(dateWords('soon')).toBe('soon')
    expect(dateWords('2026-13-04')).toBe('2026-13-04')
  })
})

describe('counts and lists', () => {
  it('read as sentences', () => {
    expect([plural(1, 'run'), plural(0, 'run'), plural(2, 'run')]).toEqual(['1 run', '0 runs', '2 runs'])
    expect(listWords(['a', 'b', 'c'])).toBe('a, b and c')
    expect(listWords([])).toBe('')
  })
})

describe('numbers', () => {
  it('are printed with a true minus and powers of ten', () => {
    expect(numberText(-1234.5, 5)).toBe('−1234.5')
    expect(numberText(1.1e-5, 2)).toBe('1.1·10⁻⁵')
    expect(unitText('cm^3/min')).toBe('cm³/min')
    expect(unitText('N*m/rad')).toBe('N·m/rad')
  })

  it('of temperature differences are in kelvin', () => {
    expect(differenceUnit(celsius)).toMatchObject({ text: 'K', offset: 0 })
    expect(differenceUnit(litre)).toBe(litre)
  })

  // JCGM 100:2008 table G.2: t for 95 % and 10 degrees of freedom is 2.23; for infinitely many 1.96.
  it('name the factor of Student’s t (JCGM 100:2008, table G.2)', () => {
    expect(factorText(quantity(1, 0.1, 10), litre)).toContain('2.23 times')
    expect(factorText(quantity(1, 0.1), litre)).toContain('1.96 times')
    expect(dofText(10)).toBe('10.0')
    expect(dofText(Number.POSITIVE_INFINITY)).toBe('∞')
  })

  it('say that it was drawn, how often, and how far other draws could move it', () => {
    const simulated = {
      mean: 0.0011,
      u: 1e-4,
      low: 9e-4,
      high: 0.0014,
      bound: 0.0013,
      draws: 20_000,
      tolerance: 2e-6,
    }
    const text = factorText({ ...quantity(0.001, 1e-4), simulated }, litre)
    for (const part of [
      '20\u00a0000 joint draws',
      '0.9000 L to 1.400 L',
      'mean is 1.100 L',
      '0.002 L',
      'JCGM 101',
    ])
      expect(text).toContain(part)
  })

  it('say when the uncertainty is not known, and why', () => {
    expect(factorText(quantity(1, null), litre)).toBe('The uncertainty is not known: nobody wrote it down.')
  })
})

describe('a judged inequality', () => {
  const term = (more: Partial<Term>): Term => ({
    text: 'v < 5 L',
    value: quantity(0.004, 0.0001),
    limits: [quantity(0.005, 0)],
    direction: 'below',
    margin: quantity(0.001, 0.0001),
    probability: 0.97,
    probabilityLow: null,
    probabilityHigh: null,
    verdict: 'pass',
    unit: litre,
    lessThan: null,
    ratio: null,
    measures: ['v'],
    ...more,
  })

  it('never rounds a probability up to certainty', () => {
    expect(probabilityText(term({}))).toBe('97.0 %')
    expect(probabilityText(term({ probability: 0.99999 }))).toBe('> 99.9 %')
    expect(probabilityText(term({ probability: 0.00001 }))).toBe('< 0.1 %')
    expect(probabilityText(term({ probability: null }))).toBe('not known')
  })

  it('names its limits', () => {
    expect(limitText(term({}))).toBe('below 5 L')
    expect(limitText(term({ direction: 'between', limits: [quantity(0.003, 0), quantity(0.005, 0)] }))).toBe(
      '3 L to 5 L',
    )
  })
})
