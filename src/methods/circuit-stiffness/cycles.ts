/** Agreement of the cycles with each other. */
import { combine, type Fitted, type Line, type Scatter, sharedSlope } from './fits.ts'
import { inverse, type Put } from './found.ts'

/** Relative standard deviation of the stiffness from cycle to cycle, and last over first less 1. */
export const cycleMeasures = (lines: readonly Line[], scatter: Scatter, put: Put): void => {
  const numbers = [...new Set(lines.map((line) => line.cycle))].sort((a, b) => a - b)
  const cycles = numbers.map((cycle) => inverse(sharedSlope(lines.filter((line) => line.cycle === cycle))))
  const [first] = cycles
  const last = cycles[cycles.length - 1]
  if (!first || !last || cycles.length < 2) return
  const mean = cycles.reduce((sum, each) => sum + each.value, 0) / cycles.length
  const off = cycles.map((each) => each.value / mean - 1)
  const deviation = Math.sqrt(off.reduce((sum, each) => sum + each * each, 0) / (cycles.length - 1))
  // Derivative of the standard deviation. Where all cycles agree exactly it has none; 1 is its greatest size.
  const slope = (own: number) => (deviation > 0 ? own / deviation : 1) / (mean * (cycles.length - 1))
  const repeatability = combine(deviation, () => [
    ...cycles.map((each, i) => [slope(off[i] as number), each] as const),
    [1, spreadOfNoise(cycles, mean, deviation, scatter)],
  ])
  put('repeatability', repeatability, scatter, 'lines', 'number')
  const change = combine(last.value / first.value - 1, () => [
    [1 / first.value, last],
    [-last.value / first.value ** 2, first],
  ])
  put('cycle_change', change, scatter, 'lines', 'number')
}

/**
 * Noise alone makes the cycles of a perfect circuit differ: by √(χ²/(n − 1)) of the scatter σ of one cycle, where the
 * first order above gives σ/√(n − 1) only. This part fades as the deviation grows beyond noise, which adds in
 * quadrature to a true spread. `FADES` times σ: with u² = σ²/(n − 1)·(1 + (n − 2)·(FADES·σ/deviation)²), three cycles
 * without a true spread lie within 1.96 u in 95 of 100 (χ² of two degrees of freedom: 5.99), more cycles a little oftener.
 */
const FADES = 1.3

const spreadOfNoise = (
  cycles: readonly Fitted[],
  mean: number,
  deviation: number,
  { s }: Scatter,
): Fitted => ({
  value: 0,
  parts: (): Record<string, number> => {
    const squares = cycles.map((each) =>
      Object.values(each.parts()).reduce((sum, part) => sum + part * part, 0),
    )
    const unit = Math.sqrt(squares.reduce((sum, each) => sum + each, 0) / cycles.length) / mean
    const others = Math.sqrt((cycles.length - 2) / (cycles.length - 1))
    const noise = FADES * unit * s
    const share = deviation > noise ? noise / deviation : 1
    return others > 0 ? { 'spread of noise': others * unit * share } : {}
  },
})
