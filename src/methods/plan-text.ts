/** Sentences and sums that the plans of several methods share. */
import { tQuantile } from '../quantity/distribution.ts'
import type { Kind } from '../quantity/kinds.ts'
import type { InstrumentModel } from './method.ts'
import type { PlanNumber, PlanText } from './plan.ts'

/** Makes numbers of one kind, shown in the unit of the column, given or measure `of`. */
export const numbersOf =
  (kind: Kind, of?: string) =>
  (value: number): PlanNumber => ({ value, kind, ...(of === undefined ? {} : { of }) })

/** An uncertainty, or what follows from one: two figures. */
export const roughly = (number: PlanNumber): PlanNumber => ({ ...number, figures: 2 })

const TAIL = 1e-9

/** Says what of these readings the instrument asked for does not reach. Nothing where it reaches all, or no range is asked for. */
export const outOfRange = (
  values: readonly number[],
  model: InstrumentModel | undefined,
  shown: (value: number) => PlanNumber,
): PlanText[] => {
  const range = model?.range
  const known = values.filter(Number.isFinite)
  if (!range || known.length === 0) return []
  const [lowest, highest] = [Math.min(...known), Math.max(...known)]
  const tail = TAIL * Math.max(Math.abs(range.low), Math.abs(range.high))
  const says = (end: number, asked: number, way: string): PlanText => [
    `Out of range: the instrument asked for reads ${way} to `,
    shown(end),
    ', and ',
    shown(asked),
    ' is to be read.',
  ]
  return [
    ...(highest > range.high + tail ? [says(range.high, highest, 'up')] : []),
    ...(lowest < range.low - tail ? [says(range.low, lowest, 'down')] : []),
  ]
}

/** Says so where what is to be reached lies beyond the stop value, counted away from zero. */
export const beyondStop = (
  top: number,
  stop: number | undefined,
  shown: (value: number) => PlanNumber,
): PlanText[] =>
  stop !== undefined && Math.abs(top) > Math.abs(stop) * (1 + TAIL)
    ? [['The stop value of ', shown(stop), ' leaves no room for that: the target cannot surely be reached.']]
    : []

/** What an instrument may be wrong by anywhere on its range, as a standard uncertainty; NaN where its accuracy is not stated. */
export const levelError = (model: InstrumentModel | undefined, reading: number): number => {
  if (!model || model.gain === null || model.offset === null) return Number.NaN
  return Math.hypot(model.gain * reading, model.offset, model.calibration ?? 0)
}

/** Three readings of one thing show how they scatter, and more than twelve nobody takes. */
export const FEWEST_REPEATS = 3
const MOST_REPEATS = 12
/**
 * How often each of `groups` things must be read so that their scatter, `s` for a single reading, gives a result no more
 * than `most` of expanded uncertainty (95 %). The result moves by `lever` times the mean of one thing, the things in
 * quadrature; degrees of freedom are pooled (JCGM 100, 4.2.4). Null where not even twelve do.
 */
export const repeatsNeeded = (s: number, groups: number, lever: number, most: number): number | null => {
  const added = (n: number) =>
    (tQuantile(0.975, groups * (n - 1)) * s * lever * Math.sqrt(groups)) / Math.sqrt(n)
  for (let n = FEWEST_REPEATS; n <= MOST_REPEATS; n += 1) if (added(n) <= most) return n
  return null
}
