/** Sums that plans share, against the table of Student's t; ranges and stop values. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { beyondStop, levelError, numbersOf, outOfRange, repeatsNeeded } from '../../src/methods/plan-text.ts'
import { asked, sentence } from './plan-bench.ts'

/** df → two-sided 0.95, recomputed with mpmath; agrees with JCGM 100, table G.2. */
const table = new Map(
  readFileSync(resolve(import.meta.dirname, '../published/data/student_t_quantiles.csv'), 'utf8')
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').map(Number))
    .map(([df = Number.NaN, , , t = Number.NaN]) => [df, t] as const),
)

describe('how often to read', () => {
  test.each([3, 4, 6, 10])(
    '%i readings of one thing carry t(n − 1)/√n of their scatter (JCGM 100, G.2)',
    (n) => {
      const U = (table.get(n - 1) ?? Number.NaN) / Math.sqrt(n)
      expect(repeatsNeeded(1, 1, 1, U * 1.0001)).toBe(n)
      expect(repeatsNeeded(1, 1, 1, U * 0.9999)).toBe(n + 1)
    },
  )
  test('things of one pool share their degrees of freedom: 2 things 3 times are t(4) · √2/√3', () => {
    const U = ((table.get(4) ?? Number.NaN) * Math.sqrt(2)) / Math.sqrt(3)
    expect(repeatsNeeded(1, 2, 1, U * 1.0001)).toBe(3)
    expect(repeatsNeeded(1, 2, 1, U * 0.9999)).toBe(4)
  })
  test('three where nothing scatters, none where a dozen do not do it', () => {
    expect(repeatsNeeded(0, 1, 1, 0.1)).toBe(3)
    expect(repeatsNeeded(1, 1, 1, 0.1)).toBeNull()
    expect(repeatsNeeded(1, 1, 1e-3, 0.1)).toBe(3)
  })
})

describe('what an instrument does not reach', () => {
  const shown = numbersOf('pressure', 'pressure')
  const gauge = asked(1, 0.1, { range: { low: -10, high: 100 } })
  const said = (...values: number[]) => outOfRange(values, gauge, shown).map(sentence).join(' ')
  test('at either end, and at neither', () => {
    expect(said(0, 100, -10)).toBe('')
    expect(said(120, 50)).toMatch(/up to \{100\}, and \{120\}/)
    expect(said(-20)).toMatch(/down to \{-10\}, and \{-20\}/)
  })
  test('nothing is said of a range that nobody asked for', () => {
    expect(outOfRange([1e9], asked(1, 0.1), shown)).toEqual([])
    expect(outOfRange([Number.NaN], gauge, shown)).toEqual([])
  })
  test('a stop value counts away from zero', () => {
    expect(beyondStop(-6, -5, shown).length).toBe(1)
    expect(beyondStop(-4, -5, shown)).toEqual([])
    expect(beyondStop(5, 5, shown)).toEqual([])
    expect(beyondStop(1e9, undefined, shown)).toEqual([])
  })
})

test('the error of a level is not known where the accuracy is not', () => {
  expect(levelError(asked(1, 0.1), 100)).toBe(0.5)
  expect(levelError(asked(1, 0.1, { offset: null }), 100)).toBeNaN()
  expect(levelError(undefined, 100)).toBeNaN()
})
