/** NIST Statistical Reference Datasets (StRD): certified values, public domain. */
import { describe, expect, test } from 'vitest'
import { fitLine, fitThroughOrigin } from '../../src/quantity/fit.ts'
import { fitLinear } from '../../src/quantity/fit-linear.ts'
import { mean, standardDeviation } from '../../src/quantity/statistics.ts'
import { certified, column, readTable, relativeError } from './data.ts'

function expectCertified(actual: number | undefined, dataset: string, quantity: string, tolerance: number) {
  const error = relativeError(actual ?? Number.NaN, certified(dataset, quantity))
  expect(error, `${dataset} ${quantity}: ${actual}`).toBeLessThan(tolerance)
}

const columnsOf = (name: string, ...names: string[]) =>
  names.map((each) => column(readTable(`nist_strd_${name}`), each))

describe('NIST StRD Norris: straight line, lower difficulty', () => {
  const [x = [], y = []] = columnsOf('norris', 'x', 'y')
  const line = fitLine(x, y)
  test.each([
    ['B0', line.intercept],
    ['sd_B0', line.uIntercept],
    ['B1', line.slope],
    ['sd_B1', line.uSlope],
    ['residual_sd', line.residual],
  ])('%s to 10 digits', (quantity, actual) => expectCertified(actual, 'norris', quantity, 1e-10))

  test('degrees of freedom', () => expect(line.dof).toBe(certified('norris', 'df_res')))

  test('the same by reflections', () => {
    const fit = fitLinear([x.map(() => 1), x], y)
    expectCertified(fit?.coefficients[0], 'norris', 'B0', 1e-10)
    expectCertified(fit?.uncertainties[1], 'norris', 'sd_B1', 1e-10)
    expectCertified(fit?.residual, 'norris', 'residual_sd', 1e-10)
  })

  test('a time of milliseconds since 1970 changes nothing but the intercept', () => {
    // x itself is rounded to 2^-12 out there, a millionth of its range.
    const late = fitLine(
      x.map((value) => value + 1.75e12),
      y,
    )
    expect(relativeError(late.slope, certified('norris', 'B1'))).toBeLessThan(5e-5)
    expect(relativeError(late.residual, certified('norris', 'residual_sd'))).toBeLessThan(5e-5)
  })
})

test('NIST StRD NoInt1: line through the origin, average difficulty, to 10 digits', () => {
  const [x = [], y = []] = columnsOf('noint1', 'x', 'y')
  const fit = fitThroughOrigin(x, y)
  expectCertified(fit.slope, 'noint1', 'B1', 1e-10)
  expectCertified(fit.uSlope, 'noint1', 'sd_B1', 1e-10)
  expectCertified(fit.residual, 'noint1', 'residual_sd', 1e-10)
  expect(fit.dof).toBe(certified('noint1', 'df_res'))
})

test('NIST StRD Pontius: parabola in loads up to 3e6, unscaled, to 9 digits', () => {
  const [x = [], y = []] = columnsOf('pontius', 'x', 'y')
  const fit = fitLinear([x.map(() => 1), x, x.map((value) => value ** 2)], y)
  for (const j of [0, 1, 2]) {
    expectCertified(fit?.coefficients[j], 'pontius', `B${j}`, 1e-9)
    expectCertified(fit?.uncertainties[j], 'pontius', `sd_B${j}`, 1e-9)
  }
  expectCertified(fit?.residual, 'pontius', 'residual_sd', 1e-9)
})

test('NIST StRD Longley: seven nearly dependent coefficients, higher difficulty, to 7 digits', () => {
  const names = ['x1', 'x2', 'x3', 'x4', 'x5', 'x6']
  const columns = columnsOf('longley', ...names)
  const [y = []] = columnsOf('longley', 'y')
  const fit = fitLinear([y.map(() => 1), ...columns], y)
  for (const j of [0, 1, 2, 3, 4, 5, 6]) {
    expectCertified(fit?.coefficients[j], 'longley', `B${j}`, 1e-7)
    expectCertified(fit?.uncertainties[j], 'longley', `sd_B${j}`, 1e-7)
  }
})

test('NIST StRD NumAcc4: spread of 0.1 about 10000000.2, to the 8 digits that doubles can hold', () => {
  const [y = []] = columnsOf('numacc4', 'y')
  expectCertified(mean(y), 'numacc4', 'mean', 1e-15)
  expectCertified(standardDeviation(y), 'numacc4', 'sd_n_minus_1', 2e-8)
})
