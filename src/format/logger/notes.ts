/** What is worth knowing of a log and is no fault: said on the page of the run. */
import { lineOf } from './scan-faults.ts'
import type { LoggerText } from './types.ts'

/** Longest steps that still count as one interval, of those at the usual one. */
const GAP = 1.5
/** Share of steps at the usual interval from which on a log counts as evenly sampled. */
const EVEN = 0.9

export type Sampling = {
  /** The usual step between two rows, s; null where there is none. */
  readonly interval: number | null
  /** Rows with the time of the row above. */
  readonly doubled: number
  readonly gaps: number
  readonly longest: { readonly seconds: number; readonly row: number } | null
}

/** Steps of a time column in seconds; rows without a time are passed over. */
export function samplingOf(times: Float64Array): Sampling {
  const interval = usualStep(times)
  let doubled = 0
  let gaps = 0
  let longest: { seconds: number; row: number } | null = null
  let before = Number.NaN
  for (let row = 0; row < times.length; row++) {
    const time = times[row] as number
    if (Number.isNaN(time)) continue
    const step = time - before
    before = time
    if (step === 0) doubled++
    if (interval === null || !(step > GAP * interval)) continue
    gaps++
    if (longest === null || step > longest.seconds) longest = { seconds: step, row }
  }
  return { interval, doubled, gaps, longest }
}

/** The median of the steps over the first rows, where most of these are about alike; doubled times do not count. */
function usualStep(times: Float64Array): number | null {
  const looked = times.subarray(0, 20_000).filter(Number.isFinite)
  const steps = looked.subarray(1).map((time, row) => time - (looked[row] as number))
  const sorted = steps.filter((step) => step > 0).sort()
  const middle = sorted[sorted.length >> 1]
  if (middle === undefined || sorted.length < 10) return null
  const alike = sorted.filter((step) => step > middle / GAP && step < GAP * middle).length
  return alike >= EVEN * sorted.length ? middle : null
}

export const secondsWords = (seconds: number): string => `${Number(seconds.toPrecision(4))} s`

export function notesOf(
  { encoding }: LoggerText,
  text: string,
  starts: Int32Array,
  times: Float64Array | undefined,
): string[] {
  const notes: string[] = []
  if (encoding === 'Windows-1252')
    notes.push(
      'the data file is not valid UTF-8 and was read as Windows-1252; figures are not touched by that',
    )
  if (!times) return notes
  const { interval, doubled, gaps, longest } = samplingOf(times)
  if (doubled > 0) {
    notes.push(
      `${doubled} ${doubled === 1 ? 'row has' : 'rows have'} the time of the row above; all are kept`,
    )
  }
  if (gaps > 0 && longest && interval !== null) {
    const line = lineOf(text, starts[longest.row] ?? 0)
    const count = gaps === 1 ? 'samples are missing once' : `samples are missing ${gaps} times`
    notes.push(
      `${count} in a log of one every ${secondsWords(interval)}: the longest gap, ${secondsWords(longest.seconds)}, ends on line ${line}`,
    )
  }
  return notes
}
