/** JCGM 106 with distributions from JCGM 101: probabilities counted over draws, against closed forms. */
import { describe, expect, test } from 'vitest'
import { judgeCriterion } from '../../src/judge/judge.ts'
import { toleranceOfShare } from '../../src/judge/room.ts'
import type { Judgement } from '../../src/judge/types.ts'
import { BATCH, streamsOf } from '../../src/quantity/draws.ts'
import {
  evaluateDraws,
  evaluateQuantity,
  parseFormula,
  prepareFormulas,
} from '../../src/quantity/formula/index.ts'
import type { Part, Quantity, Shape } from '../../src/quantity/types.ts'

await prepareFormulas()

const NUMBER = [0, 0, 0, 0, 0, 0] as const
const BATCHES = 10

const quantity = (name: string, value: number, u: number, shape: Shape): Quantity => {
  const part: Part = { u, dof: Number.POSITIVE_INFINITY, pool: name, shape }
  return { value, dim: NUMBER, parts: { [name]: part }, why: [] }
}

type Inputs = Readonly<Record<string, Quantity>>

const drawsOf = (inputs: Inputs): Record<string, Float64Array> => {
  const names = Object.keys(inputs)
  const parts = names.map((name) => inputs[name]?.parts?.[name] as Part)
  const draws = Object.fromEntries(names.map((name) => [name, new Float64Array(BATCHES * BATCH)]))
  const z = new Float64Array(names.length)
  for (let batch = 0; batch < BATCHES; batch += 1) {
    const next = streamsOf(
      names.map((source, i) => ({ source, ...(parts[i] as Part) })),
      batch,
    )
    for (let trial = 0; trial < BATCH; trial += 1) {
      next(z)
      names.forEach((name, i) => {
        const values = draws[name] as Float64Array
        values[batch * BATCH + trial] = (inputs[name]?.value ?? 0) + (parts[i]?.u ?? 0) * (z[i] as number)
      })
    }
  }
  return draws
}

const parsed = (text: string) => {
  const node = parseFormula(text)
  if (!node.ok) throw new Error(node.error[0]?.message)
  return node.value
}

/** `y` is the model; the criterion speaks of `y`. */
const judged = (inputs: Inputs, model: string, accept: string, p = 0.95, simulate = true): Judgement => {
  const y = evaluateQuantity(parsed(model), inputs)
  if (!y.ok) throw new Error(y.error[0]?.message)
  const draws = drawsOf(inputs)
  const values = { ...inputs, y: y.value }
  const ofY = evaluateDraws(parsed(model), draws, inputs, {}) as Float64Array
  const judgement = judgeCriterion({
    criterion: {
      id: 'c',
      accept,
      rule: { kind: 'guarded', p, text: `guarded ${100 * p} %` },
      why: 'invented',
    },
    formula: parsed(accept),
    scope: {
      values,
      measures: new Set(['y']),
      positive: new Set(['y']),
      functions: {},
      ...(simulate ? { draws: { ...draws, y: ofY } } : {}),
    },
    unitOf: () => ({ text: '1', dim: NUMBER, factor: 1, offset: 0, energy: false }),
    bars: [],
    basis: () => [],
    sourceWords: (source) => source,
  })
  if (!judgement.ok) throw new Error(judgement.error)
  return judgement.value
}

const termOf = (judgement: Judgement) => judgement.terms[0] as Judgement['terms'][number]

describe('sum of squares of two normals at 0 (JCGM 101, 9.4): exponential, mean 2u² = 50e-6', () => {
  const inputs = { a: quantity('a', 0, 0.005, 'normal'), b: quantity('b', 0, 0.005, 'normal') }
  test.each([
    [100e-6, 'undetermined'],
    [200e-6, 'pass'],
    [300e-6, 'pass'],
  ] as const)('P(y < %d) = 1 − exp(−limit/50e-6): %s', (limit, verdict) => {
    const judgement = judged(inputs, 'a^2 + b^2', `y < ${limit}`)
    const { probability, tolerance } = termOf(judgement)
    expect(Math.abs((probability ?? 0) - (1 - Math.exp(-limit / 50e-6)))).toBeLessThan(2 * (tolerance ?? 0))
    expect(judgement.verdict).toBe(verdict)
  })
  test('u 50e-6, 95 % interval from −50e-6·ln 0.975 to −50e-6·ln 0.025; "less than" −50e-6·ln 0.05', () => {
    const { value, lessThan } = termOf(judged(inputs, 'a^2 + b^2', 'y < 300e-6'))
    const simulated = value.simulated
    expect(Math.abs((simulated?.u ?? 0) - 50e-6)).toBeLessThan(1e-6)
    expect(Math.abs((simulated?.low ?? 0) + 50e-6 * Math.log(0.975))).toBeLessThan(0.2e-6)
    expect(Math.abs((simulated?.high ?? 0) + 50e-6 * Math.log(0.025))).toBeLessThan(4e-6)
    expect(Math.abs((lessThan ?? 0) + 50e-6 * Math.log(0.05))).toBeLessThan(3e-6)
  })
  test('where first order would have passed, the draws do not: P(y < 120e-6) is 0.909', () => {
    expect(judged(inputs, 'a^2 + b^2', 'y < 120e-6', 0.95, false).verdict).toBe('pass')
    expect(judged(inputs, 'a^2 + b^2', 'y < 120e-6').verdict).toBe('undetermined')
  })
  test('a probability that is no further above the rule than other draws could move it does not pass', () => {
    // 1 − exp(−3) = 0.950213, and 10⁵ trials know it to ± 0.0014.
    const judgement = judged(inputs, 'a^2 + b^2', 'y < 150e-6')
    expect(Math.abs((termOf(judgement).probability ?? 0) - 0.950213)).toBeLessThan(0.0028)
    expect(judgement.verdict).toBe('undetermined')
  })
})

describe('sum of four rectangulars (JCGM 101, 9.2.3)', () => {
  const inputs = Object.fromEntries(['a', 'b', 'c', 'd'].map((x) => [x, quantity(x, 0, 1, 'rectangular')]))
  const end = 2 * Math.sqrt(3) * (2 - (3 / 5) ** 0.25)
  test('95 % lie within ±2√3 (2 − (3/5)^¼), where first order says 94.8 %', () => {
    const { probability, probabilityLow, probabilityHigh, tolerance } = termOf(
      judged(inputs, 'a + b + c + d', `-${end} < y < ${end}`),
    )
    expect(Math.abs((probability ?? 0) - 0.95)).toBeLessThan(2 * (tolerance ?? 0))
    expect(probabilityLow).toBeCloseTo(0.025, 2)
    expect(probabilityHigh).toBeCloseTo(0.025, 2)
    const first = termOf(judged(inputs, 'a + b + c + d', `-${end} < y < ${end}`, 0.95, false))
    expect(first.probability).toBeCloseTo(0.9476, 3)
  })
})

describe('mass calibration (JCGM 101, 9.3), mg', () => {
  const inputs = {
    mr: quantity('mr', 100_000, 0.05, 'normal'),
    dr: quantity('dr', 1.234, 0.02, 'normal'),
    ra: quantity('ra', 1.2, 0.1 / Math.sqrt(3), 'rectangular'),
    rw: quantity('rw', 8000, 1000 / Math.sqrt(3), 'rectangular'),
    rr: quantity('rr', 8000, 50 / Math.sqrt(3), 'rectangular'),
  }
  const model = '(mr + dr) * (1 + (ra - 1.2) * (1 / rw - 1 / rr)) - 100000'
  test('u 0.0754 and [1.0834, 1.3825] as printed, where first order gives 0.0539', () => {
    const { value } = termOf(judged(inputs, model, 'y < 1.4'))
    expect(Math.abs((value.simulated?.u ?? 0) - 0.0754793)).toBeLessThan(0.001)
    expect(Math.abs((value.simulated?.low ?? 0) - 1.0834)).toBeLessThan(0.004)
    expect(Math.abs((value.simulated?.high ?? 0) - 1.3825)).toBeLessThan(0.004)
  })
})

test('linear and normal: as the first order says', () => {
  const inputs = { a: quantity('a', 10, 0.3, 'normal'), b: quantity('b', 4, 0.4, 'normal') }
  const [drawn, first] = [true, false].map((simulate) =>
    termOf(judged(inputs, 'a - b', 'y < 6.9', 0.95, simulate)),
  ) as [Judgement['terms'][number], Judgement['terms'][number]]
  expect(Math.abs((drawn.probability ?? 0) - (first.probability ?? 0))).toBeLessThan(
    2 * (drawn.tolerance ?? 0),
  )
  expect(drawn.value.simulated?.u).toBeCloseTo(0.5, 2)
  expect(drawn.margin.simulated?.u).toBeCloseTo(0.5, 2)
})

test('trials without a value are neither met nor missed', () => {
  const inputs = { a: quantity('a', 1, 0.5, 'normal') }
  // A third of a normal with u half the value… √a has none where a < 0: Φ(−2) = 2.275 %.
  const { probability, probabilityLow } = termOf(judged(inputs, 'sqrt(a)', 'y > 0.001'))
  expect(probability).toBeCloseTo(1 - 0.02275, 2)
  expect(probabilityLow).toBeLessThan(0.001)
})

test('tolerance of a share: 2√(P(1 − P)/n); none in n is below 3/n with 95 %', () => {
  expect(toleranceOfShare(0.95, 10_000)).toBeCloseTo(2 * Math.sqrt((0.95 * 0.05) / 10_000), 12)
  expect(toleranceOfShare(1, 10_000)).toBe(3e-4)
  expect((1 - toleranceOfShare(0, 10_000)) ** 10_000).toBeCloseTo(0.05, 3)
  expect(toleranceOfShare(0.95, 0)).toBe(0)
})
