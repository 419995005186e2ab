/** What to look at and what to load next, once judged: what stayed and where it slipped, and the load that was not reached. */

import { subtract } from '../../quantity/combine.ts'
import { tQuantile } from '../../quantity/distribution.ts'
import { KINDS } from '../../quantity/kinds.ts'
import { effectiveDof, expanded, standardUncertainty } from '../../quantity/quantity.ts'
import type { Quantity } from '../../quantity/types.ts'
import { inPercent, missedOn, rounded, roundedUp } from '../advice-text.ts'
import type { Advice, Columns, Givens, JudgedTerm, Measures } from '../method.ts'
import { channelsOf, suffixOf } from './describe.ts'

const DEGREE = Math.PI / 180
const isAngle = ({ dim }: Quantity): boolean => dim[5] === 1 && dim[0] === 0

/** Movements in millimetres or degrees, as they were read. */
const moved = (quantity: Quantity, value = quantity.value): string =>
  isAngle(quantity) ? `${rounded(value / DEGREE, 3)}°` : `${rounded(1000 * value, 3)} mm`

/** A load in the unit it was read in. */
const loaded = (measures: Measures, value: number, shown = rounded(value, 4)): string => {
  const isMoment = measures.sustained_peak?.dim.every((x, i) => x === KINDS.moment.dim[i])
  return `${shown} ${isMoment ? 'N·m' : 'N'}`
}

type Link = { readonly from: string; readonly to: string; readonly jump: Quantity }

/** Between which neighbouring stations, in the order of the columns, the set changes most; only where it surely does. */
const slipping = (measures: Measures, stations: readonly string[]): Link | null => {
  const links = stations.slice(1).flatMap((to, k): Link[] => {
    const from = stations[k] ?? ''
    const [a, b] = [measures[`permanent_set_${from}`], measures[`permanent_set_${to}`]]
    if (!a || !b || isAngle(a) !== isAngle(b)) return []
    const jump = subtract(b, a)
    return [{ from, to, jump }]
  })
  const surely = links.filter(
    ({ jump }) => Math.abs(jump.value) > (expanded(jump)?.U ?? Number.POSITIVE_INFINITY),
  )
  return surely.reduce<Link | null>(
    (most, link) => (!most || Math.abs(link.jump.value) > Math.abs(most.jump.value) ? link : most),
    null,
  )
}

/** Whether it is softer than before, as far as two loadings show. */
const stiffnessWords = (measures: Measures): string => {
  const change = measures.stiffness_change
  const U = change ? expanded(change)?.U : undefined
  if (!change || U === undefined) return ''
  if (Math.abs(change.value) <= U)
    return ` Its stiffness is what it was (${inPercent(change.value)} ± ${inPercent(U)}): something slipped or seated rather than cracked.`
  return change.value < 0
    ? ` It is ${inPercent(-change.value)} softer than before: something cracked, yielded or came loose. Do not load it again before that is found.`
    : ` It is ${inPercent(change.value)} stiffer than before: play was taken up.`
}

const setAdvice = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  stations: readonly string[],
): Advice[] => {
  const missed = [...missedOn(judged, 'permanent_set'), ...missedOn(judged, 'recovery')]
  const set = measures.permanent_set
  const peak = measures.peak_deflection
  if (missed.length === 0 || !set) return []
  const U = expanded(set)?.U
  const share = peak && peak.value > 0 ? `, ${inPercent(set.value / peak.value)} of the movement` : ''
  // Without a set there is nothing to look for: the reading is too coarse, and the budget says where.
  if (U !== undefined && set.value <= U) return []
  const link = slipping(measures, stations)
  const where = link
    ? ` ${moved(link.jump, Math.abs(link.jump.value))} of it lies between \`${link.from}\` and \`${link.to}\`: look there for a joint that slips or a part that has yielded.`
    : ''
  return [
    {
      text: `${moved(set)} stayed${share}.${where}${stiffnessWords(measures)} Then load to the same target again, no higher: a set that does not come again was seating (common practice), one that comes again is yield.`,
      measures: ['permanent_set'],
    },
  ]
}

/** The reading that makes the target sure, where it was not. */
const nextLoad = (measures: Measures, judged: readonly JudgedTerm[], givens: Givens): Advice[] => {
  const ratio = measures.peak_ratio
  const u = ratio ? standardUncertainty(ratio) : null
  const { target = Number.NaN, tolerance = 0 } = givens.numbers
  const missed = [...missedOn(judged, 'peak_ratio'), ...missedOn(judged, 'sustained_peak')]
  if (!ratio || u === null || missed.length === 0) return []
  const needed = 1 - tolerance + tQuantile(0.95, effectiveDof(ratio)) * u
  if (ratio.value >= needed) return []
  return [
    {
      text: `Next load: ${loaded(measures, needed * target, roundedUp(needed * target))} or more on the scale through the whole hold; this time the lowest reading of the hold was ${loaded(measures, ratio.value * target)}.`,
      measures: ['peak_ratio'],
    },
  ]
}

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
  columns: Columns = {},
): readonly Advice[] => [
  ...setAdvice(measures, judged, channelsOf(Object.keys(columns)).map(suffixOf)),
  ...nextLoad(measures, judged, givens),
]
