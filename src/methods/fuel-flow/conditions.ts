/** What bars a pass: attitude or least fuel not reached, too short, a flow that falls off. */
import { tCdf } from '../../quantity/distribution.ts'
import { fitLine } from '../../quantity/fit.ts'
import { coverageFactor, effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { vonNeumann } from '../../quantity/von-neumann.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { pointsOf } from './points.ts'
import { at, type Choice } from './select.ts'

const FLOWS = ['flow', 'mass_flow', 'flow_ratio', 'late_flow', 'late_ratio']
const WHOLE = ['flow', 'mass_flow', 'flow_ratio']

const percent = (share: number): string => `${Number((100 * share).toPrecision(3))} %`.replace('-', '−')
const degrees = (angle: number): string => `${Number(((180 * angle) / Math.PI).toPrecision(3))}°`
const millimetres = (length: number): string => `${Number((1000 * length).toPrecision(3))} mm`
const bar = (text: string, measures: readonly string[] = FLOWS): Remark => ({
  effect: 'bars-pass',
  text,
  measures,
})

/** Reached: the margin is not negative, with probability p. A sentence where it is not, or where that is not known. */
const notReached = (margin: Quantity, p: number): string | null => {
  const u = standardUncertainty(margin)
  if (u === null) return `is not known to be reached: ${margin.why[0] ?? 'its uncertainty is not stated'}`
  const probability =
    u > 1e-12 ? tCdf(margin.value / u, effectiveDof(margin)) : margin.value >= -1e-12 ? 1 : 0
  return probability >= p ? null : `was not reached with ${Number((100 * p).toPrecision(5))} % confidence`
}

const attitude = (measures: Measures, { numbers }: Givens, p: number): Remark[] => {
  const { least_attitude: asked, attitude: read } = numbers
  if (asked === undefined) return []
  const margin = measures.attitude_margin
  if (read === undefined || !margin)
    return [bar(`an attitude of ${degrees(asked)} is asked for, and \`attitude\` was not measured`)]
  const fault = notReached(margin, p)
  return fault ? [bar(`the attitude of ${degrees(asked)} ${fault}: it was ${degrees(read)}`)] : []
}

const head = (measures: Measures, { numbers }: Givens, p: number): Remark[] => {
  const { least_head: asked } = numbers
  if (asked === undefined) return []
  const [margin, lowest] = [measures.head_margin, measures.lowest_head]
  if (!margin || !lowest)
    return [bar(`the least fuel is a head of ${millimetres(asked)}, and no \`head\` was read`)]
  const fault = notReached(margin, p)
  if (!fault) return []
  return [
    bar(
      `the least-fuel head of ${millimetres(asked)} ${fault}: the lowest was ${millimetres(lowest.value)}, and the flow below it is not extrapolated`,
    ),
  ]
}

const long = (columns: Columns, { numbers }: Givens, { rows, firstSign }: Choice): Remark[] => {
  const lasted = at(columns, 'time', rows.at(-1) ?? -1) - at(columns, 'time', rows[0] ?? -1)
  if (numbers.hold === undefined || lasted >= numbers.hold * (1 - 1e-12)) return []
  const [run, asked] = [`${Number(lasted.toPrecision(3))} s`, `${numbers.hold} s are asked for`]
  return [
    bar(
      firstSign === null
        ? `the flow was read for ${run}, and ${asked}`
        : `the flow ran for ${run} up to the last reading before its first sign of failing, and ${asked}`,
    ),
  ]
}

const steady = (measures: Measures, columns: Columns, choice: Choice, p: number): Remark[] => {
  const change = measures.flow_change
  const u = change ? standardUncertainty(change) : null
  const remarks: Remark[] = []
  if (change && u !== null && change.value < -coverageFactor(change, Math.max(p, 0.95)) * u)
    remarks.push(
      bar(
        `the flow falls off by ${percent(-change.value)} from the first half to the second: the mean says more than the engine gets at the end. A criterion on \`late_flow\` or \`late_ratio\` judges the second half`,
        WHOLE,
      ),
    )
  const { time, collected } = pointsOf(columns, choice)
  if (choice.rows.length > time.length && vonNeumann(fitLine(time, collected).residuals).correlated)
    remarks.push(
      bar(
        'the collected amount does not follow a straight line (von Neumann ratio, 1 %): the flow is not steady',
        WHOLE,
      ),
    )
  return remarks
}

const notes = (measures: Measures, { numbers, words }: Givens, { rows, firstSign }: Choice): Remark[] => {
  const said: string[] = []
  if (rows.length < 3) said.push('one timed filling shows no scatter: read in between, or repeat the run')
  const rule = words.feed === 'pump' ? 1.25 : 1.5
  if (numbers.factor !== undefined && numbers.factor < rule)
    said.push(
      `the factor is ${numbers.factor}, and 14 CFR 23.955 (before amendment 64) takes ${rule} for ${words.feed === 'pump' ? 'a pump' : 'gravity feed'}: the card says why`,
    )
  if (numbers.least_attitude === undefined)
    said.push(
      '`least_attitude` is not given: whether this is the most adverse attitude, the card does not say',
    )
  if (numbers.least_head === undefined)
    said.push('`least_head` is not given: whether this was the least fuel, the card does not say')
  if (firstSign !== null && !measures.unusable)
    said.push(
      'a first sign was seen, but without `fuel_aboard` (and `density`, where one of both is a mass) the unusable fuel is not known',
    )
  return said.map((text) => ({ effect: 'note', text }))
}

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const choice = selection as Choice
  return [
    ...attitude(measures, givens, p),
    ...head(measures, givens, p),
    ...long(columns, givens, choice),
    ...steady(measures, columns, choice, p),
    ...notes(measures, givens, choice),
  ]
}
