/** The fitter against a certified non-linear problem, and the spectrum against the sum that it is a fast form of. */
import { describe, expect, test } from 'vitest'
import { leastSquares, type Model } from '../../../src/methods/ring-down/least-squares.ts'
import { transform } from '../../../src/methods/ring-down/spectrum.ts'
import { normal, random } from '../../../src/quantity/random.ts'
import { certified, column, readTable, relativeError } from '../../published/data.ts'

/** y = b1 (1 − exp(−b2 x)) */
const misra: Model = (x, parameters, slopes) => {
  const [b1 = 0, b2 = 0] = parameters
  const decay = Math.exp(-b2 * x)
  slopes[0] = 1 - decay
  slopes[1] = b1 * x * decay
  return b1 * (1 - decay)
}

describe('NIST StRD Misra1a, non-linear, lower difficulty', () => {
  const rows = readTable('nist_strd_misra1a')
  const x = Float64Array.from(column(rows, 'x'))
  const y = Float64Array.from(column(rows, 'y'))
  test.each([
    ['start 1', [500, 0.0001]],
    ['start 2', [250, 0.0005]],
  ])('from %s to 9 digits', (_, start) => {
    const fit = leastSquares(misra, x, y, Float64Array.from(start))
    const s = Math.sqrt((fit?.squares ?? Number.NaN) / (fit?.dof ?? Number.NaN))
    const u = (fit?.factor ?? []).map((row) => Math.hypot(...row) * s)
    const close = (actual: number | undefined, quantity: string) =>
      expect(relativeError(actual ?? Number.NaN, certified('misra1a', quantity)), quantity).toBeLessThan(1e-9)
    close(fit?.parameters[0], 'b1')
    close(fit?.parameters[1], 'b2')
    close(u[0], 'sd_b1')
    close(u[1], 'sd_b2')
    close(fit?.squares, 'ss_res')
    close(s, 'residual_sd')
    expect(fit?.dof).toBe(certified('misra1a', 'df_res'))
  })
  test('no more points than parameters is no fit', () => {
    expect(leastSquares(misra, x.slice(0, 2), y.slice(0, 2), Float64Array.of(250, 5e-4))).toBeNull()
  })
})

test('the fast transform is the sum of its definition', () => {
  const generator = random(1)
  const signal = Float64Array.from({ length: 64 }, () => normal(generator))
  const real = Float64Array.from(signal)
  const imaginary = new Float64Array(64)
  transform(real, imaginary)
  for (const line of [0, 1, 7, 32, 63]) {
    const angle = (k: number) => (-2 * Math.PI * line * k) / 64
    expect(real[line]).toBeCloseTo(
      signal.reduce((sum, y, k) => sum + y * Math.cos(angle(k)), 0),
      10,
    )
    expect(imaginary[line]).toBeCloseTo(
      signal.reduce((sum, y, k) => sum + y * Math.sin(angle(k)), 0),
      10,
    )
  }
})
