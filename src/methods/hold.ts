/**
 * What a load or pressure was held at, and for how long. The raw maximum of many readings is biased upward by their
 * noise and says nothing of a hold; what counts is the level that the readings did not fall below for the time asked.
 * Rows keep their order; `time` rises. All in SI.
 */

/** Rows `from` to `to` (both included) and the row between them with the lowest value. */
export type Held = { readonly from: number; readonly to: number; readonly lowest: number }

export type HoldInput = {
  readonly time: ArrayLike<number>
  readonly values: ArrayLike<number>
  /** Shortest time that counts, s. */
  readonly hold: number
  /** Longest gap between two readings of one hold, s; none: any. */
  readonly maxGap?: number
}

const at = (values: ArrayLike<number>, row: number): number => values[row] ?? Number.NaN

/** Rows that have both a time and a value, in stretches without a gap beyond `maxGap`. */
const stretches = ({ time, values, maxGap = Number.POSITIVE_INFINITY }: HoldInput): number[][] => {
  const found: number[][] = []
  let last = Number.NaN
  for (let row = 0; row < values.length; row += 1) {
    if (Number.isNaN(at(values, row)) || Number.isNaN(at(time, row))) continue
    const current = found[found.length - 1]
    if (current && at(time, row) - last <= maxGap) current.push(row)
    else found.push([row])
    last = at(time, row)
  }
  return found
}

/**
 * The highest level that was not undercut over `hold`: over all windows from one reading to the first one at least
 * `hold` later, the largest of their lowest values. Null where no window is that long.
 * A window of lowest values moves along in one pass, so a logger file of a million rows costs no more than reading it.
 */
export const sustainedPeak = (input: HoldInput): Held | null => {
  const { time, values, hold } = input
  let best: Held | null = null
  for (const rows of stretches(input)) {
    // Rows that can still be the lowest of a window, values rising from head on.
    const lowest: number[] = []
    let head = 0
    let end = 0
    for (let start = 0; start < rows.length; start += 1) {
      const from = rows[start] as number
      const longEnough = () => end > start && at(time, rows[end - 1] as number) - at(time, from) >= hold
      while (end < rows.length && !longEnough()) {
        const row = rows[end] as number
        while (lowest.length > head && at(values, lowest[lowest.length - 1] as number) >= at(values, row))
          lowest.pop()
        lowest.push(row)
        end += 1
      }
      if (!longEnough()) break
      while ((lowest[head] as number) < from) head += 1
      const row = lowest[head] as number
      if (!best || at(values, row) > at(values, best.lowest))
        best = { from, to: rows[end - 1] as number, lowest: row }
    }
  }
  return best
}

/** The longest stretch of consecutive readings of which each is at or above what `level` gives for its row. */
export const longestHold = (input: Omit<HoldInput, 'hold'>, level: (row: number) => number): Held | null => {
  const { time, values } = input
  let best: Held | null = null
  for (const rows of stretches({ ...input, hold: 0 })) {
    let first: number | null = null
    let lowest = 0
    for (const row of rows) {
      if (!(at(values, row) >= level(row))) {
        first = null
        continue
      }
      if (first === null || at(values, row) < at(values, lowest)) lowest = row
      first ??= row
      if (!best || at(time, row) - at(time, first) > at(time, best.to) - at(time, best.from))
        best = { from: first, to: row, lowest }
    }
  }
  return best
}

/**
 * Steps of which each was held for a time of its own (s): every step becomes two readings, at its beginning and at
 * its end, on a clock that stands still between steps. Reading 2n and 2n + 1 belong to step n.
 */
export const stepsAsReadings = (
  held: ArrayLike<number>,
  values: ArrayLike<number>,
): { readonly time: Float64Array; readonly values: Float64Array } => {
  const time = new Float64Array(2 * held.length)
  let clock = 0
  for (let step = 0; step < held.length; step += 1) {
    time[2 * step] = clock
    if (at(held, step) > 0) clock += at(held, step)
    time[2 * step + 1] = clock
  }
  return { time, values: Float64Array.from(time, (_, reading) => at(values, reading >> 1)) }
}
