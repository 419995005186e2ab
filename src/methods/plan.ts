/** What a method says before the test: neutral, in SI, so that sheet, card page and form put it in the units of the gauge. */
import type { Kind } from '../quantity/kinds.ts'
import type { Dimension } from '../quantity/types.ts'
import type { InstrumentModel, Measures } from './method.ts'

/** A number in a plan, SI. `of` names the column, given or measure whose unit shows it. */
export type PlanNumber = {
  readonly value: number
  readonly kind: Kind
  readonly of?: string
  /** Significant figures; absent: four. */
  readonly figures?: number
}

/** A sentence with its numbers apart, so that whoever shows it puts them in the units of the gauge. */
export type PlanText = readonly (string | PlanNumber)[]

export type PlanTable = {
  readonly columns: readonly {
    readonly title: string
    readonly kind: Kind
    readonly of?: string
    /** The cell is what the column `of` of the readings will hold (an entry, a phase): nothing is left to write there. */
    readonly written?: boolean
  }[]
  /** In the order of the test; null where nothing is known. */
  readonly rows: readonly (readonly (number | string | null)[])[]
}

/** What is known before the test: the steps to go through, the rows to be read, and what to know beside them. */
export type Plan = {
  readonly steps: PlanTable | null
  readonly readings: PlanTable | null
  readonly text: readonly PlanText[]
}

/** What a plan is made from, beside givens and instruments. SI. */
export type PlanContext = {
  /** Planned time between readings, s. */
  readonly every?: number
  readonly stopAt: Readonly<Record<string, number>>
  readonly targets: Readonly<Record<string, number>>
  /** By column: its dimension, and the size in SI of one unit and of one digit of the gauge, for round steps. */
  readonly gauges: Readonly<
    Record<string, { readonly dim: Dimension; readonly unit: number; readonly digit?: number }>
  >
  /** Criteria over one measure: the value at which each is just met. */
  readonly limits: readonly PlanLimit[]
  /** Results of this card on this article, the newest first. */
  readonly earlier: readonly { readonly run: string; readonly measures: Measures }[]
}

export type PlanLimit = {
  /** Its name in words. */
  readonly criterion: string
  readonly measure: string
  readonly direction: 'below' | 'above'
  readonly value: number
}

/** One-sided 95 % of the normal distribution. */
const SURE = 1.645

/**
 * What the gauge must show at least for the true value to be `limit` or more with 95 % (guard band of JCGM 106, 8.3.2):
 * scale, zero, non-linearity (as large as the zero error where not stated), hysteresis, calibration and the digits of
 * a difference, rounded up to a whole `digit`. Null where the accuracy is not stated.
 */
export const sureReading = (
  limit: number,
  gauge: InstrumentModel,
  digit = gauge.resolution,
): number | null => {
  const { gain, offset, calibration = 0, hysteresis, resolution } = gauge
  if (gain === null || offset === null) return null
  const linearity = (gauge.linearity ?? offset) / Math.SQRT2
  const digits = resolution / Math.sqrt(6)
  const u = Math.hypot(gain * limit, offset, linearity, hysteresis ?? 0, calibration, digits)
  const needed = limit + SURE * u
  // The tolerance keeps a whole digit from being rounded up by a float's tail.
  return digit > 0 ? Math.ceil(needed / digit - 1e-9) * digit : needed
}

/** What round steps are multiples of, up to the next power of ten. */
const ROUND = [1, 1.5, 2, 2.5, 3, 4, 5, 10]

/** Loads in whole round steps up to `top`, about `count` of them; the last one is `top` itself, never a small rest before it. */
export const loadSteps = (top: number, unit: number, count: number): number[] => {
  const power = 10 ** Math.floor(Math.log10(top / unit / count))
  const all = ROUND.map((one) => {
    const step = one * power * unit
    const whole = Array.from({ length: Math.max(0, Math.ceil(top / step) - 1) }, (_, i) => (i + 1) * step)
    return [...whole.filter((load) => top - load > 0.3 * step), top]
  })
  const off = (steps: readonly number[]) => Math.abs(steps.length - count)
  return all.reduce((best, steps) => (off(steps) < off(best) ? steps : best))
}
