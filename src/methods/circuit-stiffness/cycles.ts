/** Agreement of the cycles with each other. */
import { combine, type Line, type Scatter, sharedSlope } from './fits.ts'
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
  const repeatability = combine(deviation, () => cycles.map((each, i) => [slope(off[i] as number), each]))
  put('repeatability', repeatability, scatter, 'lines', 'number')
  const change = combine(last.value / first.value - 1, () => [
    [1 / first.value, last],
    [-last.value / first.value ** 2, first],
  ])
  put('cycle_change', change, scatter, 'lines', 'number')
}
