import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blockMeans, fitLine, fitThroughOrigin, lineAt, uncertaintyAt } from '../../src/quantity/fit.ts'
import { fitLinear } from '../../src/quantity/fit-linear.ts'
import { normal, random, rectangular } from '../../src/quantity/random.ts'
import { mean, median, standardDeviation } from '../../src/quantity/statistics.ts'
import { vonNeumann } from '../../src/quantity/von-neumann.ts'

describe('limiting cases', () => {
  test('points on a line: the line, no scatter', () => {
    const line = fitLine([1, 2, 3, 4], [5, 7, 9, 11])
    expect(line).toMatchObject({ slope: 2, intercept: 3, atMean: 8, xMean: 2.5, residual: 0, dof: 2 })
    expect(lineAt(line, 10)).toBe(23)
  })
  test('two points have a slope and no scatter; one has neither', () => {
    expect(fitLine([0, 1], [1, 3])).toMatchObject({ slope: 2, dof: 0 })
    expect(fitLine([0, 1], [1, 3]).uSlope).toBeNaN()
    expect(fitLine([1], [1]).slope).toBeNaN()
    expect(fitLine([2, 2, 2], [1, 2, 3]).slope).toBeNaN()
    expect(
      fitLinear(
        [
          [1, 1, 1],
          [2, 2, 2],
        ],
        [1, 2, 3],
      ),
    ).toBeNull()
    expect(
      fitLinear(
        [
          [1, 1],
          [1, 2],
          [1, 4],
        ],
        [1, 2],
      ),
    ).toBeNull()
  })
  test('statistics: one reading has no spread', () => {
    expect(standardDeviation([5])).toBeNaN()
    expect(mean([])).toBeNaN()
    expect(median([3, 1, 2])).toBe(2)
    expect(median([4, 1, 2, 3])).toBe(2.5)
  })
  test('blocks: equal, the first ones longer by one where they must be', () => {
    expect([...blockMeans([1, 2, 3, 4, 5, 6], 3)]).toEqual([1.5, 3.5, 5.5])
    expect([...blockMeans([1, 2, 3, 4, 5], 2)]).toEqual([2, 4.5])
    expect([...blockMeans([1, 2], 5)]).toEqual([1, 2])
  })
})

describe('properties', () => {
  const points = fc.array(
    fc.tuple(fc.double({ min: -50, max: 50, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true })),
    {
      minLength: 4,
      maxLength: 30,
    },
  )
  test('line and reflections agree, weighted as if a point were there several times', () => {
    fc.assert(
      fc.property(
        points,
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 30, maxLength: 30 }),
        (list, counts) => {
          const [x, y] = [list.map((point) => point[0]), list.map((point) => point[1])]
          if (standardDeviation(x) < 0.1) return
          const line = fitLine(x, y)
          const fit = fitLinear([x.map(() => 1), x], y)
          expect(fit?.coefficients[1]).toBeCloseTo(line.slope, 6)
          expect(fit?.uncertainties[1]).toBeCloseTo(line.uSlope, 6)
          // Covariance of the two coefficients from the orthogonal parts
          const [row0, row1] = [fit?.factor[0], fit?.factor[1]]
          const covariance = (row0?.[0] ?? 0) * (row1?.[0] ?? 0) + (row0?.[1] ?? 0) * (row1?.[1] ?? 0)
          expect(covariance).toBeCloseTo(line.covariance, 4)

          const weighted = fitLine(x, y, counts)
          const repeated = list.flatMap((point, i) => Array(counts[i]).fill(point) as (typeof point)[])
          const same = fitLine(
            repeated.map((point) => point[0]),
            repeated.map((point) => point[1]),
          )
          expect(weighted.slope).toBeCloseTo(same.slope, 6)
          expect(weighted.atMean).toBeCloseTo(same.atMean, 6)
        },
      ),
    )
  })
  test('the zero of x is nobody’s business: slope, scatter and band stay', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: -1000, max: 1000 }), (list, shift) => {
        const [x, y] = [list.map((point) => point[0]), list.map((point) => point[1])]
        if (standardDeviation(x) < 0.1) return
        const [here, there] = [
          fitLine(x, y),
          fitLine(
            x.map((value) => value + shift),
            y,
          ),
        ]
        expect(there.slope).toBeCloseTo(here.slope, 6)
        expect(lineAt(there, 3 + shift)).toBeCloseTo(lineAt(here, 3), 5)
        expect(uncertaintyAt(there, 3 + shift)).toBeCloseTo(uncertaintyAt(here, 3), 5)
      }),
    )
  })
})

test('the stated uncertainty of a slope is the scatter of slopes (coverage, 4000 lines of 12 points)', () => {
  const generator = random(2)
  const x = Array.from({ length: 12 }, (_, i) => i)
  const slopes: number[] = []
  const variances: number[] = []
  const proportions: number[] = []
  for (let run = 0; run < 4000; run++) {
    const y = x.map((value) => 3 * value + 0.5 * normal(generator))
    const line = fitLine(x, y)
    slopes.push(line.slope)
    variances.push(line.uSlope ** 2)
    proportions.push(fitThroughOrigin(x, y).slope)
  }
  expect(mean(slopes)).toBeCloseTo(3, 2)
  expect(standardDeviation(slopes) / Math.sqrt(mean(variances))).toBeCloseTo(1, 1)
  // Σx² = 506
  expect(standardDeviation(proportions) / (0.5 / Math.sqrt(506))).toBeCloseTo(1, 1)
})

describe('von Neumann’s ratio', () => {
  // Hart, Annals of Mathematical Statistics 13 (1942), 445: 1 % points of δ²/s²; from memory.
  test.each([
    [6, 0.6738],
    [8, 0.7575],
    [10, 0.8353],
    [15, 0.988],
  ])('n = %d: Hart’s point %d has a probability of 0.01 ± 0.003', (n, point) => {
    // A ramp with so much of an alternating part that it has the wanted ratio.
    let [low, high] = [0, 100]
    const wave = (part: number) => Array.from({ length: n }, (_, i) => i + part * (-1) ** i)
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (vonNeumann(wave(middle)).ratio < point) low = middle
      else high = middle
    }
    expect(vonNeumann(wave(low)).ratio).toBeCloseTo(point, 6)
    expect(Math.abs(vonNeumann(wave(low)).p - 0.01)).toBeLessThan(0.003)
  })
  test('one in a hundred of independent series is called correlated, drifting ones are', () => {
    const generator = random(9)
    let called = 0
    for (let run = 0; run < 20_000; run++) {
      if (vonNeumann(Array.from({ length: 12 }, () => normal(generator))).correlated) called++
    }
    expect(called / 20_000).toBeGreaterThan(0.007)
    expect(called / 20_000).toBeLessThan(0.013)
    expect(vonNeumann([1, 2, 3, 4, 5, 6, 7, 8]).correlated).toBe(true)
    expect(vonNeumann([1, -1, 1, -1, 1, -1, 1, -1]).correlated).toBe(false)
    expect(vonNeumann([2, 2, 2, 2, 2]).correlated).toBe(false)
  })
})

test('draws: uniform, normal and rectangular have their moments', () => {
  const generator = random(123)
  const uniform = Float64Array.from({ length: 100_000 }, generator)
  expect(mean(uniform)).toBeCloseTo(0.5, 2)
  expect(standardDeviation(uniform)).toBeCloseTo(1 / Math.sqrt(12), 2)
  expect(standardDeviation(Float64Array.from({ length: 100_000 }, () => normal(generator)))).toBeCloseTo(1, 1)
  expect(standardDeviation(Float64Array.from({ length: 100_000 }, () => rectangular(generator)))).toBeCloseTo(
    1,
    1,
  )
})
