/** What bars a pass: the stated pressure was not there, or the readings do not follow the model. */
import { tCdf } from '../../quantity/distribution.ts'
import { fitLine } from '../../quantity/fit.ts'
import { coverageFactor, effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { columnsUsed } from './readings.ts'
import { asHold, type Hold } from './select.ts'
import { pascals, percent, seconds } from './words.ts'

/** Fewer readings leave the scatter fewer than three degrees of freedom. */
const LEAST_READINGS = 5
const HOLD = 60
/** Twice the stated pressure is as far from it as half of it (both common practice, no source). */
const MOST = 2

const bar = (text: string): Remark => ({ effect: 'bars-pass', text })
const note = (text: string): Remark => ({ effect: 'note', text })

/** P(ratio ≥ bound), with Student's t; null where the uncertainty is not known. */
const probabilityAtLeast = (ratio: Quantity, bound: number): number | null => {
  const u = standardUncertainty(ratio)
  if (u === null) return null
  const beyond = ratio.value - bound
  return u > 0 ? tCdf(beyond / u, effectiveDof(ratio)) : beyond >= 0 ? 1 : 0
}

const reached = (
  ratio: Quantity | undefined,
  bound: number,
  p: number,
  what: string,
  done: string,
): Remark[] => {
  if (!ratio) return []
  const probability = probabilityAtLeast(ratio, bound)
  if (probability !== null && probability >= p) return []
  const read = `${what} was ${percent(ratio.value)} of the stated one`
  return [
    bar(
      probability === null
        ? `${read}; whether ${done} is not known: ${ratio.why.join('; ')}.`
        : `${read}: it is not shown with ${percent(p)} confidence that ${done}.`,
    ),
  ]
}

const halvesRemark = (halves: Quantity | undefined, p: number): Remark[] => {
  const u = halves ? standardUncertainty(halves) : null
  if (!halves || u === null) return []
  const limit = coverageFactor(halves, p) * u
  if (Math.abs(halves.value) <= limit) return []
  const [difference, most] = [halves.value, limit].map((rate) => `${pascals(Math.abs(rate) * 60)}/min`)
  return [
    bar(
      `The two halves of the hold differ in slope by ${difference}, more than their uncertainty of ${most}: pumping has not settled, or a hose or diaphragm still gives.`,
    ),
  ]
}

const scatterRemarks = (columns: Columns, givens: Givens, hold: Hold): Remark[] => {
  const { effective, compensated } = pointsOf(columns, givens, hold)
  if (effective.length < LEAST_READINGS) {
    return [
      bar(
        `${effective.length} readings in the hold are too few to show their scatter: ${LEAST_READINGS} are needed, one every 10 s.`,
      ),
    ]
  }
  // Steps of a digit are alike from row to row and are in the budget as such.
  const coarse = columnsUsed(columns).some(
    (name) => (hold.residual[name] ?? 0) < (columns[name]?.resolution ?? 0) / 2,
  )
  if (coarse || !vonNeumann(fitLine(effective, compensated).residuals).correlated) return []
  return [
    bar(
      'The readings wander about the line together (von Neumann ratio, 1 %): their scatter understates the uncertainty of the slope.',
    ),
  ]
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const hold = asHold(selection)
  const asked = givens.numbers.hold ?? HOLD
  const held = hold.span.end - hold.span.start
  const pitot = givens.words.side === 'pitot'
  const pressure = pitot ? 'pressure' : 'suction'
  return [
    ...reached(
      measures.start_ratio,
      1,
      p,
      `The ${pressure} at the first fitted reading`,
      `the stated ${pressure} was reached`,
    ),
    ...reached(
      measures.least_ratio,
      0.5,
      p,
      `The ${pressure} that was left in the hold`,
      `half of the stated ${pressure} was kept`,
    ),
    ...(measures.start_ratio && measures.start_ratio.value > MOST
      ? [
          bar(
            `The ${pressure} at the first fitted reading was ${percent(measures.start_ratio.value)} of the stated one: what it loses there is not what it loses at the stated one. An absolute pressure written as gauge pressure, or instruments driven beyond the test: check them first.`,
          ),
        ]
      : []),
    ...(held < asked * (1 - 1e-9)
      ? [bar(`The hold was ${seconds(held)} after settling; ${seconds(asked)} are asked for.`)]
      : []),
    ...halvesRemark(measures.halves, p),
    ...scatterRemarks(columns, givens, hold),
    ...(hold.skipped > 0
      ? [note(`${hold.skipped} rows of the hold are left out because a reading is missing in them.`)]
      : []),
    note(
      pitot
        ? 'This says nothing of the static line, and every joint opened later needs a new check.'
        : 'This says nothing of the pitot line, and every joint opened later needs a new check.',
    ),
  ]
}
