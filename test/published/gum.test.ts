/** JCGM 100:2008 (GUM), annex H and clause 4. Tolerances are half a unit of the last printed digit, or finer. */
import { describe, expect, test } from 'vitest'
import { propagate } from '../../src/quantity/combine.ts'
import { tQuantile } from '../../src/quantity/distribution.ts'
import { fitLine, lineAt, uncertaintyAt } from '../../src/quantity/fit.ts'
import {
  budget,
  correlation,
  coverageFactor,
  effectiveDof,
  exact,
  expanded,
  standardUncertainty,
} from '../../src/quantity/quantity.ts'
import { mean, standardDeviation } from '../../src/quantity/statistics.ts'
import type { Part, Parts, Quantity } from '../../src/quantity/types.ts'
import { column, readTable } from './data.ts'

const NUMBER = [0, 0, 0, 0, 0, 0] as const
const KNOWN = Number.POSITIVE_INFINITY

function part(u: number, dof = KNOWN, pool = 'own'): Part {
  return { u, dof, pool, shape: 'normal' }
}
function quantity(value: number, parts: Parts): Quantity {
  return { value, dim: NUMBER, parts, why: [] }
}

test('GUM 4.4.3: mean, spread and u of 20 temperatures', () => {
  const t = column(readTable('gum_4_4_3_temperatures'), 't_C')
  expect(mean(t)).toBeCloseTo(100.145, 10)
  expect(standardDeviation(t)).toBeCloseTo(1.489, 3)
  expect(standardDeviation(t) / Math.sqrt(20)).toBeCloseTo(0.333, 3)
})

test('GUM H.5: spread of ten daily means', () => {
  const volts = column(readTable('gum_h5_anova'), 'mean_V')
  expect(mean(volts)).toBeCloseTo(10.000097, 6)
  expect(standardDeviation(volts) * 1e6).toBeCloseTo(57.0895, 3)
})

describe('GUM H.1: end gauge (nm), from unrounded values', () => {
  const row = new Map(readTable('gum_h1_end_gauge').map((each) => [each.quantity, each]))
  const input = (name: string): Quantity => {
    const { estimate, u, df } = row.get(name) ?? {}
    return quantity(Number(estimate), { [name]: part(Number(u), df ? Number(df) : KNOWN, name) })
  }
  const names = [
    'l_S',
    'd_mean',
    'd_random',
    'd_systematic',
    'delta_alpha',
    'theta',
    'alpha_S',
    'delta_theta',
  ]
  const length = propagate(
    ([lS = 0, d = 0, d1 = 0, d2 = 0, da = 0, theta = 0, alpha = 0, dt = 0]) =>
      lS + d + d1 + d2 - lS * (da * theta + alpha * dt),
    names.map(input),
    NUMBER,
  )
  test('length', () => expect(length.value).toBeCloseTo(50_000_838, 6))
  test('combined standard uncertainty', () => expect(standardUncertainty(length)).toBeCloseTo(31.658, 3))
  test('Welch–Satterthwaite', () => expect(effectiveDof(length)).toBeCloseTo(16.7414, 3))
  test('U for 99 % with the truncated 16 degrees of freedom', () => {
    expect(tQuantile(0.995, 16) * (standardUncertainty(length) ?? 0)).toBeCloseTo(92.467, 2)
  })
  test('t for the fractional degrees of freedom (t table, 16.7413663)', () => {
    expect(coverageFactor(length)).toBeCloseTo(2.1123012, 6)
  })
  test('budget: the reference gauge leads, then the temperature difference; α and θ contribute nothing', () => {
    const lines = budget(length)
    expect(lines.map((line) => line.source).slice(0, 2)).toEqual(['l_S', 'delta_theta'])
    expect(Math.abs(lines[0]?.u ?? 0)).toBeCloseTo(25, 4)
    expect(Math.abs(lines[1]?.u ?? 0)).toBeCloseTo(16.599, 3)
    expect(lines.find((line) => line.source === 'alpha_S' || line.source === 'theta')).toBeUndefined()
    expect(lines.reduce((sum, line) => sum + line.share, 0)).toBeCloseTo(1, 12)
  })
})

describe('GUM H.2: resistance and reactance, inputs correlated through five simultaneous sets', () => {
  const rows = readTable('gum_h2_resistance_reactance')
  // The deviation of each set is a source of its own; together they have exactly the covariances of the means.
  const measured = (name: string, factor = 1): Quantity => {
    const values = column(rows, name).map((value) => value * factor)
    const middle = mean(values)
    const parts = values.map((value, k) => [`set ${k}`, part((value - middle) / Math.sqrt(5 * 4), 4, 'sets')])
    return quantity(middle, Object.fromEntries(parts))
  }
  const [V, I, phi] = [measured('V_volt'), measured('I_mA', 1e-3), measured('phi_rad')]
  const R = propagate(([v = 0, i = 1, p = 0]) => (v / i) * Math.cos(p), [V, I, phi], NUMBER)
  const X = propagate(([v = 0, i = 1, p = 0]) => (v / i) * Math.sin(p), [V, I, phi], NUMBER)
  const Z = propagate(([v = 0, i = 1]) => v / i, [V, I], NUMBER)

  test('means and their correlations', () => {
    expect(standardUncertainty(V)).toBeCloseTo(3.20936e-3, 8)
    expect(correlation(V, I)).toBeCloseTo(-0.355311, 5)
    expect(correlation(V, phi)).toBeCloseTo(0.857624, 5)
    expect(correlation(I, phi)).toBeCloseTo(-0.645111, 5)
  })
  test.each([
    ['R', R, 127.73217, 0.0710714],
    ['X', X, 219.846512, 0.2955817],
    ['Z', Z, 254.259702, 0.2363361],
  ] as const)('%s', (_, q, value, u) => {
    expect(q.value).toBeCloseTo(value, 5)
    expect(standardUncertainty(q)).toBeCloseTo(u, 6)
  })
  test('correlations of the results', () => {
    expect(correlation(R, X)).toBeCloseTo(-0.58843, 4)
    expect(correlation(R, Z)).toBeCloseTo(-0.485259, 4)
    expect(correlation(X, Z)).toBeCloseTo(0.992512, 4)
  })
  test('one pool of scatter: four degrees of freedom, however many results', () => {
    expect(effectiveDof(R)).toBeCloseTo(4, 10)
  })
})

describe('GUM H.3: thermometer calibration', () => {
  const rows = readTable('gum_h3_thermometer')
  const line = fitLine(
    column(rows, 't_C').map((t) => t - 20),
    column(rows, 'b_C'),
  )
  test('coefficients and their uncertainties', () => {
    expect(line.intercept).toBeCloseTo(-0.17120379013135, 12)
    expect(line.uIntercept).toBeCloseTo(0.00287759783515995, 12)
    expect(line.slope).toBeCloseTo(0.00218269773988728, 12)
    expect(line.uSlope).toBeCloseTo(0.000667938773227832, 12)
    expect(line.residual).toBeCloseTo(0.00349756396350528, 12)
    expect(line.covariance / (line.uSlope * line.uIntercept)).toBeCloseTo(-0.930429603093, 10)
    expect(line.dof).toBe(9)
  })
  test('about the mean temperature the two are independent', () => {
    expect(line.xMean + 20).toBeCloseTo(24.0084545455, 9)
    expect(line.atMean).toBeCloseTo(-0.162454545455, 10)
    expect(line.uMean).toBeCloseTo(0.00105455521, 10)
  })
  test('correction at 30 °C', () => {
    expect(lineAt(line, 10)).toBeCloseTo(-0.149376812732477, 12)
    expect(uncertaintyAt(line, 10)).toBeCloseTo(0.00413859575285, 12)
  })
  test('the same from two quantities with orthogonal parts, with U for 95 %', () => {
    const atMean = quantity(line.atMean, { mean: part(line.uMean, 9, 'fit') })
    const slope = quantity(line.slope, { slope: part(line.uSlope, 9, 'fit') })
    const at30 = propagate(
      ([a = 0, b = 0, x = 0]) => a + b * (x - line.xMean),
      [atMean, slope, exact(10, NUMBER)],
      NUMBER,
    )
    expect(expanded(at30)?.dof).toBeCloseTo(9, 9)
    expect(expanded(at30)?.U).toBeCloseTo(0.00936215, 8)
  })
})

test('GUM 5.2.2: ten resistors from one standard add linearly', () => {
  const resistor = quantity(1000, { standard: part(0.1) })
  const sum = propagate(
    (values) => values.reduce((total, value) => total + value, 0),
    Array(10).fill(resistor),
    NUMBER,
  )
  expect(standardUncertainty(sum)).toBeCloseTo(1, 9)
})
