import { beforeAll, describe, expect, test } from 'vitest'
import {
  conjuncts,
  dimensionOf,
  evaluate,
  evaluateQuantity,
  namesIn,
  parseFormula,
  prepareFormulas,
  rewrite,
  substitute,
} from '../../../src/quantity/formula/index.ts'
import type { FormulaFunction, Node } from '../../../src/quantity/formula/types.ts'
import { KINDS } from '../../../src/quantity/kinds.ts'
import { correlation, exact, standardUncertainty, unknown } from '../../../src/quantity/quantity.ts'
import type { Dimension, Quantity } from '../../../src/quantity/types.ts'

beforeAll(prepareFormulas)

function parse(text: string): Node {
  const result = parseFormula(text)
  if (!result.ok) throw new Error(`${text}: ${result.error[0]?.message}`)
  return result.value
}

const SCOPE: Readonly<Record<string, Dimension>> = {
  leak_rate: KINDS['volume-flow'].dim,
  pressure: KINDS.pressure.dim,
  arm: KINDS.length.dim,
  angle: KINDS.angle.dim,
  ratio: KINDS.number.dim,
  temperature: KINDS.temperature.dim,
  stiffness: KINDS['angular-stiffness'].dim,
}

const halve: FormulaFunction = {
  name: 'halve',
  meaning: 'half of an angle, up or down',
  source: 'invented for this test',
  parameters: [
    { name: 'way', meaning: 'which', kind: 'text', words: ['upward', 'downward'] },
    { name: 'of', meaning: 'what', kind: 'angle' },
  ],
  result: 'angle',
  example: { formula: 'halve(upward, 2 rad)', value: '1 rad', source: 'by hand' },
  evaluate: (way, of) =>
    Number(of) > 10 ? 'the angle is beyond 10 rad' : (way === 'upward' ? 1 : -1) * (Number(of) / 2),
}

describe('dimensions', () => {
  test.each([
    ['leak_rate * 24 h', KINDS.volume.dim],
    ['pressure * arm^2', KINDS.force.dim],
    ['stiffness * angle', KINDS.moment.dim],
    ['sqrt(arm^4)', KINDS.area.dim],
    ['atan2(arm, 1 m)', KINDS.angle.dim],
    ['asin(arm / 2 m)', KINDS.angle.dim],
    ['sin(angle) + 3 %', KINDS.number.dim],
    ['max(arm, 2 in, abs(arm))', KINDS.length.dim],
    ['g0 * 2 s', KINDS.speed.dim],
    ['temperature - 5 degC', KINDS.temperature.dim],
    ['0 cm^3/min <= leak_rate < 6 cm^3/min and arm > 2 in', KINDS.number.dim],
  ] as const)('%s', (text, dim) => {
    expect(dimensionOf(parse(text), SCOPE)).toEqual({ ok: true, value: dim })
  })

  test.each([
    ['arm + pressure', 'formula/dimension-mismatch', 'a length and a pressure'],
    ['leak_rate < 6', 'formula/dimension-mismatch', 'a volume flow and a pure number'],
    ['stiffness < 5 lbf/in', 'formula/dimension-mismatch', 'a moment per angle and a force per length'],
    ['sin(ratio)', 'formula/dimension-mismatch', 'an angle'],
    ['exp(arm)', 'formula/dimension-mismatch', 'a pure number'],
    ['arm^ratio', 'formula/dimension-mismatch', 'length'],
    ['2^arm', 'formula/dimension-mismatch', 'exponent'],
    ['max(arm, angle)', 'formula/dimension-mismatch', 'a length and an angle'],
    ['halve(upward, arm)', 'formula/dimension-mismatch', 'an angle'],
    ['leak_rat < 1 L/h', 'formula/unknown-name', 'leak_rat'],
    ['constructor', 'formula/unknown-name', 'constructor'],
    ['min * 2', 'formula/unknown-name', 'min'],
    ['sqr(2)', 'formula/unknown-function', 'sqr'],
    ['toString(2)', 'formula/unknown-function', 'toString'],
    ['abs(1, 2)', 'formula/arguments', '1 value'],
    ['halve(upward)', 'formula/arguments', '2 values'],
    ['halve(upwards, angle)', 'formula/arguments', 'words'],
    ['(arm < 2 m) * 2', 'formula/not-allowed', 'comparison'],
    ['-(arm < 2 m)', 'formula/not-allowed', 'comparison'],
    ['abs(arm < 2 m)', 'formula/not-allowed', 'comparison'],
    ['1 m < arm > 2 m', 'formula/not-allowed', 'one way'],
  ])('%s', (text, code, part) => {
    const result = dimensionOf(parse(text), SCOPE, { halve })
    expect(result.ok).toBe(false)
    if (!result.ok) expect(result.error[0]).toMatchObject({ code, message: expect.stringContaining(part) })
  })

  test('all unknown names are told, each with its place and its neighbour', () => {
    const result = dimensionOf(parse('arms + lek_rate'), SCOPE)
    expect(result).toMatchObject({
      ok: false,
      error: [
        { start: 0, end: 4, expected: ['arm'] },
        { start: 7, end: 15, expected: ['leak_rate'] },
      ],
    })
  })

  test('a long sum is looked at once a term, not once a pair', () => {
    const long = parse(Array(150).fill('arm').join(' + '))
    expect(dimensionOf(long, SCOPE)).toEqual({ ok: true, value: KINDS.length.dim })
  })
})

describe('values', () => {
  const numbers = { leak_rate: 1e-7, pressure: -2500, arm: 0.2, angle: 0.5, ratio: 3, temperature: 293.15 }
  test.each([
    ['pressure * 1.06', -2650],
    ['-2^2', -4],
    ['20 degC - 5 degC', 15],
    ['2 * (3 + ratio)^2 / 4', 18],
    ['log10(1000) + exp(log(2)) + sqrt(16)', 9],
    ['atan2(1, 1) * 4', Math.PI * 1],
    ['tan(45 deg) + cos(60 deg) + sin(30 deg)', 2],
    ['acos(0.5) - asin(0.5) - atan(0)', Math.PI / 6],
    ['min(3, 1, 2) + max(3, 1, 2) + abs(-1)', 5],
    ['g0', 9.80665],
    ['halve(downward, angle)', -0.25],
  ])('%s', (text, value) => {
    const result = evaluate(parse(text), numbers, { halve })
    expect(result.ok && result.value).toBeCloseTo(value, 10)
  })
  test.each([
    ['1 / (ratio - 3)', 'divided by 0'],
    ['sqrt(pressure)', 'sqrt'],
    ['asin(ratio)', 'asin'],
    ['missing * 2', 'missing'],
    ['halve(upward, 11 rad)', 'beyond 10 rad'],
    ['ratio^1e9', 'no number'],
    ['arm < 3 m', 'comparison'],
  ])('no value: %s', (text, part) => {
    const result = evaluate(parse(text), numbers, { halve })
    expect(result).toMatchObject({
      ok: false,
      error: [{ code: 'formula/no-value', message: expect.stringContaining(part) }],
    })
  })
})

describe('quantities', () => {
  const flow: Quantity = {
    value: 1e-7,
    dim: KINDS['volume-flow'].dim,
    parts: { gauge: { u: 2e-9, dof: Infinity, pool: 'gauge', shape: 'normal' } },
    why: [],
  }
  const quantityOf = (text: string, scope: Readonly<Record<string, Quantity>>) => {
    const result = evaluateQuantity(parse(text), scope)
    if (!result.ok) throw new Error(result.error[0]?.message)
    return result.value
  }
  test('units and uncertainty go along; the result shares the source', () => {
    const day = quantityOf('leak_rate * 24 h', { leak_rate: flow })
    expect(day.value).toBeCloseTo(0.00864, 12)
    expect(day.dim).toEqual(KINDS.volume.dim)
    expect(standardUncertainty(day)).toBeCloseTo(1.728e-4, 12)
    expect(correlation(day, flow)).toBeCloseTo(1, 12)
    expect(standardUncertainty(quantityOf('leak_rate - leak_rate', { leak_rate: flow }))).toBe(0)
  })
  test('not known stays not known', () => {
    const vague = unknown(2, KINDS.number.dim, 'nobody measured it')
    expect(quantityOf('leak_rate * n', { leak_rate: flow, n: vague })).toMatchObject({
      parts: null,
      why: vague.why,
    })
    expect(quantityOf('leak_rate * 2', { leak_rate: flow, n: vague }).parts).not.toBeNull()
  })
  test('faults of names, dimensions and values come back', () => {
    expect(evaluateQuantity(parse('leak'), { leak_rate: flow })).toMatchObject({
      error: [{ code: 'formula/unknown-name' }],
    })
    const zero = { n: exact(0, KINDS.number.dim) }
    expect(evaluateQuantity(parse('1/n'), zero)).toMatchObject({ error: [{ code: 'formula/no-value' }] })
    expect(evaluateQuantity(parse('n < 1'), zero)).toMatchObject({ error: [{ code: 'formula/not-allowed' }] })
  })
})

test('names used: no constants, no words of functions', () => {
  expect(namesIn(parse('halve(upward, angle) + g0 * arm + angle'), { halve })).toEqual(['angle', 'arm'])
})

test('a criterion is a conjunction of comparisons', () => {
  expect(conjuncts(parse('(a < 1 and b < 2) and 0 < c < 3'))).toMatchObject({
    ok: true,
    value: [{}, {}, { ops: ['<', '<'] }],
  })
  expect(conjuncts(parse('a < 1 and b'))).toMatchObject({
    ok: false,
    error: [{ code: 'formula/not-a-criterion', start: 10 }],
  })
})

test('worked out with numbers', () => {
  expect(substitute(parse('test_pressure * 1.06'), () => '-2.5 kPa')).toBe('-2.5 kPa * 1.06')
  expect(substitute(parse('a - b^2'), () => '-2')).toBe('-2 - (-2)^2')
})

test('nodes can be replaced: an aggregate by a name', () => {
  const node = rewrite(parse('2 * mean(load) + 1 N'), (at) =>
    at.type === 'call' ? { type: 'name', name: 'mean_load', start: at.start, end: at.end } : null,
  )
  expect(namesIn(node)).toEqual(['mean_load'])
})
