/** Conformity against the worked numbers of JCGM 106:2012 (values recomputed, see the titles). */
import { beforeAll, describe, expect, it } from 'vitest'
import type { CriterionRecord } from '../../src/format/types.ts'
import { judgeCriterion } from '../../src/judge/judge.ts'
import { parseFormula, prepareFormulas } from '../../src/quantity/formula/index.ts'
import { exact } from '../../src/quantity/quantity.ts'
import type { Dimension, Quantity, Unit } from '../../src/quantity/types.ts'

const ONE: Dimension = [0, 0, 0, 0, 0, 0]
const UNIT: Unit = { text: '1', dim: ONE, factor: 1, offset: 0, energy: false }

beforeAll(prepareFormulas)

const measured = (value: number, u: number, dof = Number.POSITIVE_INFINITY): Quantity => ({
  value,
  dim: ONE,
  parts: { a: { u, dof, pool: 'a', shape: 'normal' } },
  why: [],
})

const judge = (
  accept: string,
  values: Record<string, Quantity>,
  rule: CriterionRecord['rule'] = { kind: 'guarded', p: 0.95, text: 'guarded 95 %' },
  bars: { text: string; measures?: string[] }[] = [],
) => {
  const formula = parseFormula(accept)
  if (!formula.ok) throw new Error(formula.error[0]?.message)
  const result = judgeCriterion({
    criterion: { id: 'c', accept, rule, why: 'a test' },
    formula: formula.value,
    scope: { values, measures: new Set(Object.keys(values)), positive: new Set(['leak']), functions: {} },
    unitOf: () => UNIT,
    bars,
    basis: () => [],
    sourceWords: (source) => source,
  })
  if (!result.ok) throw new Error(result.error)
  return result.value
}

const probability = (accept: string, y: Quantity): number =>
  judge(accept, { y }).terms[0]?.probability ?? Number.NaN

describe('JCGM 106:2012, probability of conformity', () => {
  it('7.3 example, one upper limit: y −5.47, u 0.05, limit −5.40 gives 0.92 (0.9192433)', () => {
    expect(probability('y <= -5.40', measured(-5.47, 0.05))).toBeCloseTo(0.9192433, 6)
  })
  it('7.4 example, interval: y 13.6, u 1.8, 12.5 to 16.3 gives 0.66 (0.6626298)', () => {
    expect(probability('12.5 <= y <= 16.3', measured(13.6, 1.8))).toBeCloseTo(0.6626298, 6)
  })
  it('7.2.3, few degrees of freedom: y 4.8, u 0.12, limit 5, 9 degrees gives 0.935035 (normal 0.952210)', () => {
    expect(probability('y <= 5', measured(4.8, 0.12, 9))).toBeCloseTo(0.935035, 6)
    expect(probability('y <= 5', measured(4.8, 0.12))).toBeCloseTo(0.95221, 6)
  })
  it('7.6, capability index 1 in the middle of the interval: 0.9544997', () => {
    expect(probability('-2 <= y <= 2', measured(0, 1))).toBeCloseTo(0.9544997, 6)
  })
  it('8.3.2, guard band of 1.6449 u at 95 %: the acceptance limit is 4.802618 for a limit of 5 and u 0.12', () => {
    expect(judge('y <= 5', { y: measured(4.8026, 0.12) }).verdict).toBe('pass')
    expect(judge('y <= 5', { y: measured(4.8027, 0.12) }).verdict).toBe('undetermined')
  })
  it('annex A.5 style, t-based guard band: s 0.20, 9 degrees, limit 2.00 rejects beyond 2.3666226', () => {
    expect(judge('y >= 2', { y: measured(2.3667, 0.2, 9) }).verdict).toBe('pass')
    expect(judge('y >= 2', { y: measured(2.3665, 0.2, 9) }).verdict).toBe('undetermined')
  })
})

describe('decision rules', () => {
  it('does not fail a value in the middle of an interval only because the gauge is coarse', () => {
    expect(judge('-1 <= y <= 1', { y: measured(0, 3) }).verdict).toBe('undetermined')
  })
  it('fails on either side of an interval', () => {
    expect(judge('-1 <= y <= 1', { y: measured(3, 0.5) }).verdict).toBe('fail')
    expect(judge('-1 <= y <= 1', { y: measured(-3, 0.5) }).verdict).toBe('fail')
  })
  it('reads a limit that stands first, and chains that fall', () => {
    expect(judge('5 > y', { y: measured(1, 0.1) }).terms[0]?.direction).toBe('below')
    expect(judge('16.3 >= y >= 12.5', { y: measured(13.6, 1.8) }).terms[0]?.probability).toBeCloseTo(
      0.66263,
      5,
    )
  })
  it('compares the difference with zero where measures stand on both sides, correlation kept', () => {
    const shared = measured(10, 1)
    const verdict = judge('y < z', { y: shared, z: { ...shared, value: 10.001 } })
    expect(verdict.verdict).toBe('pass')
    expect(verdict.terms[0]?.probability).toBe(1)
  })
  it('takes a conjunction by Bonferroni: two terms at 97 % each are not 95 % together', () => {
    const y = measured(1.88, 1)
    const z = {
      ...measured(1.88, 1),
      parts: { b: { u: 1, dof: Number.POSITIVE_INFINITY, pool: 'b', shape: 'normal' as const } },
    }
    expect(judge('y > 0', { y, z }).verdict).toBe('pass')
    expect(judge('y > 0 and z > 0', { y, z }).verdict).toBe('undetermined')
  })
  it('passes and fails exact counts by comparison', () => {
    expect(judge('y <= 0', { y: exact(0, ONE) }).verdict).toBe('pass')
    expect(judge('y < 0', { y: exact(0, ONE) }).verdict).toBe('fail')
    expect(judge('y <= 0', { y: exact(1, ONE) }).verdict).toBe('fail')
  })
  it('does not fail a value on the limit by a float’s tail', () => {
    const simple: CriterionRecord['rule'] = { kind: 'simple', text: 'simple' }
    expect(judge('y <= 38.1', { y: exact(1.5 * 25.4, ONE) }, simple).verdict).toBe('pass')
    expect(judge('y <= 0.3', { y: exact(0.1 + 0.2, ONE) }, simple).verdict).toBe('pass')
  })
  it('leaves what is not known undetermined under a guarded rule, and says why', () => {
    const y: Quantity = { value: 1, dim: ONE, parts: null, why: ['the gauge states no accuracy'] }
    expect(judge('y < 100', { y })).toMatchObject({
      verdict: 'undetermined',
      reasons: ['the gauge states no accuracy'],
    })
    expect(judge('y < 100', { y }, { kind: 'simple', text: 'simple' }).verdict).toBe('pass')
  })
  it('never passes what is barred, and still fails it', () => {
    const bars = [{ text: 'the test pressure was not reached', measures: ['y'] }]
    expect(judge('y < 5', { y: measured(1, 0.1) }, undefined, bars)).toMatchObject({
      verdict: 'undetermined',
      barred: true,
    })
    expect(judge('y < 5', { y: measured(9, 0.1) }, undefined, bars).verdict).toBe('fail')
    expect(
      judge('y < 5', { y: measured(1, 0.1) }, undefined, [{ text: 'other', measures: ['z'] }]).verdict,
    ).toBe('pass')
  })
  it('says “less than” by the one-sided bound, from zero where the value is negative', () => {
    const term = judge('leak < 5', { leak: measured(-0.2, 0.1) }).terms[0]
    expect(term?.lessThan).toBeCloseTo(1.6448536 * 0.1, 6)
  })
})
