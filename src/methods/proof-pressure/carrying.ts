/** The rows of the loading that carried the target: where bulge and creep are read. */
import { longestHold, sustainedPeak } from '../hold.ts'
import type { Loading } from './loadings.ts'

type Series = {
  readonly time: ArrayLike<number>
  /** Pressure in the direction of the target, Pa. */
  readonly values: Float64Array
  readonly maxGap?: number
  readonly hold: number
  /** Readings of one level differ by this at most, Pa. */
  readonly apart: number
}

export type Carrying = { readonly loading: number; readonly rows: readonly number[] }

/**
 * Of the first loading that held the target (else of that with the highest held pressure) the readings from first to
 * last at what `sure` asks of each row and at the level of the hold; where the gauge cannot tell, those of its sustained peak. Null where no loading
 * was held.
 */
export const carryingOf = (
  series: Series,
  loadings: readonly Loading[],
  level: number,
  sure: (row: number) => number,
): Carrying | null => {
  const found = loadings.flatMap(({ loaded }, loading) => {
    const own = new Set(loaded)
    const values = series.values.map((value, row) => (own.has(row) ? value : Number.NaN))
    const peak = sustainedPeak({ ...series, values })
    return peak ? [{ loading, values, peak, highest: values[peak.lowest] ?? Number.NaN }] : []
  })
  const best = [...found].sort((a, b) => b.highest - a.highest)[0]
  const chosen = found.find((one) => one.highest >= level) ?? best
  if (!chosen) return null
  const { loading, values, peak, highest: top } = chosen
  const held = longestHold({ ...series, values }, (row) => Math.max(sure(row), top - series.apart))
  const { from, to } = held && held.from <= peak.lowest && peak.lowest <= held.to ? held : peak
  const rows = Array.from({ length: to - from + 1 }, (_, i) => from + i)
  return { loading, rows: rows.filter((row) => !Number.isNaN(values[row] ?? Number.NaN)) }
}
