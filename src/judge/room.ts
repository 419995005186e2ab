/** What is left between a value and its limit, and how probable it is that the true room is not negative. */
import { type Draws, withDraws } from '../quantity/draws.ts'
import { evaluateDraws } from '../quantity/formula/index.ts'
import type { FormulaFunction, Node } from '../quantity/formula/types.ts'
import type { Quantity } from '../quantity/types.ts'
import { probabilityOfRoom } from './probability.ts'

export type Room = {
  readonly margin: Quantity
  /** Probability that it is met, and that it is missed; null where the uncertainty is not known. */
  readonly met: number | null
  readonly missed: number | null
  /** Number of trials that the probabilities were counted over; 0: they come from a distribution. */
  readonly draws: number
}

/**
 * By how much a share that was counted over so many trials may be off: two standard deviations of a binomial, and
 * where all trials agree 3/n (the 95 % bound of none in n; Hanley and Lippman-Hand, JAMA 249, 1983, 1743).
 */
export const toleranceOfShare = (share: number, draws: number): number => {
  if (draws === 0) return 0
  return Math.max(2 * Math.sqrt((share * (1 - share)) / draws), 3 / draws)
}

/** JCGM 106, 7.1 with the distribution of JCGM 101. A trial without a value is neither met nor missed. */
const counted = (margin: Quantity, values: Float64Array, strict: boolean): Room => {
  let [met, missed] = [0, 0]
  for (const value of values) {
    if (strict ? value > 0 : value >= 0) met += 1
    else if (!Number.isNaN(value)) missed += 1
  }
  const draws = values.length
  return { margin: withDraws(margin, values), met: met / draws, missed: missed / draws, draws }
}

/** `difference` is the formula of the margin; `scale` the size of the numbers that were subtracted. */
export const roomOf = (
  margin: Quantity,
  difference: Node,
  strict: boolean,
  scale: number,
  scope: {
    readonly values: Readonly<Record<string, Quantity>>
    readonly functions: Readonly<Record<string, FormulaFunction>>
    readonly draws?: Draws
  },
): Room => {
  const values =
    margin.parts && scope.draws
      ? evaluateDraws(difference, scope.draws, scope.values, scope.functions)
      : undefined
  if (values) return counted(margin, values, strict)
  const met = probabilityOfRoom(margin, strict, scale)
  return { margin, met, missed: met === null ? null : 1 - met, draws: 0 }
}
