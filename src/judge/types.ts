/** What a criterion over measures comes to. */
import type { Rule } from '../format/types.ts'
import type { Quantity, Unit } from '../quantity/types.ts'

export type Verdict = 'pass' | 'fail' | 'undetermined'

/** One inequality of a criterion: `value` against one limit, or between two. */
export type Term = {
  /** As written: `leak_rate < 6 cm^3/min`. */
  readonly text: string
  readonly value: Quantity
  readonly limits: readonly Quantity[]
  readonly direction: 'below' | 'above' | 'between'
  /** What is left to the nearer limit; negative beyond it. */
  readonly margin: Quantity
  /** That the true value conforms; null where the uncertainty is not known. */
  readonly probability: number | null
  readonly probabilityLow: number | null
  readonly probabilityHigh: number | null
  /** By how much the probabilities may be off, where they were counted over draws; a verdict allows for it. */
  readonly tolerance?: number
  readonly verdict: Verdict
  readonly unit: Unit
  /** One-sided 95 % upper bound of a measure that cannot be negative, where it says more than the value. */
  readonly lessThan: number | null
  /** Limit (or width of the interval) over U: below 4 is remarked on, below 1 warned of. */
  readonly ratio: number | null
  /** Names of measures in it. */
  readonly measures: readonly string[]
}

export type Judgement = {
  readonly criterion: string
  readonly accept: string
  readonly rule: Rule
  readonly why: string
  readonly terms: readonly Term[]
  readonly verdict: Verdict
  /** A condition of the method keeps it from passing, whatever its numbers say. */
  readonly barred: boolean
  /** Why it is undetermined, or can never be a pass. */
  readonly reasons: readonly string[]
  /** What would settle it, where undetermined. */
  readonly settle: readonly string[]
}
