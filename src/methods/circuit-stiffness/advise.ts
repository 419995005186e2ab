/** Which segment to stiffen, and how far. */
import type { Advice, Givens, JudgedTerm, Measures } from '../method.ts'
import { stationsOf } from './motion.ts'
import { segmentNames } from './segments.ts'
import { inWords, percent } from './words.ts'

type Segment = { readonly from: string; readonly to: string; readonly compliance: number }

const segmentsIn = (measures: Measures, givens: Givens): Segment[] =>
  segmentNames(stationsOf(givens)).flatMap(([from, to]) => {
    const compliance = measures[`compliance_${from}_${to}`]?.value
    return compliance === undefined ? [] : [{ from, to, compliance }]
  })

/** Stiffnesses of the whole circuit, each with what turns it into one at the surface. */
const WHOLE = ['surface_stiffness', 'stiffness', 'linear_stiffness'] as const

export const advise = (measures: Measures, judged: readonly JudgedTerm[], givens: Givens): Advice[] => {
  const segments = segmentsIn(measures, givens)
  const [first, ...others] = segments
  const missed = judged.filter((term) => term.verdict !== 'pass')
  if (!first || missed.length === 0) return []
  const softest = others.reduce((most, each) => (each.compliance > most.compliance ? each : most), first)
  const total = segments.reduce((sum, each) => sum + each.compliance, 0)
  const share = percent(softest.compliance / total)
  const named = `the softest segment is ${softest.from} to ${softest.to}, with ${share} of the compliance`
  const concerning = missed.filter((term) => term.measures.some((name) => measures[name]))
  const needs = concerning.flatMap((term) => needed(term, measures, total, softest) ?? [])
  const text = [named, ...needs].join('; ')
  return concerning.length === 0 ? [] : [{ text, measures: [`compliance_${softest.from}_${softest.to}`] }]
}

/** Only where the criterion puts a lower limit on a stiffness of the whole circuit as such. */
const needed = (term: JudgedTerm, measures: Measures, total: number, softest: Segment): string[] | null => {
  const [limit] = term.limits
  const name = WHOLE.find((each) => term.measures.length === 1 && term.measures[0] === each)
  const whole = name && measures[name]
  if (!name || !whole || limit === undefined || term.direction !== 'above' || !(limit > 0)) return null
  if (Math.abs(term.value - whole.value) > 1e-9 * Math.abs(whole.value)) return null
  // The limit as a compliance in the terms of the segments: whole circuit and segments are both known there.
  const allowed = total * (whole.value / limit)
  const rest = total - softest.compliance
  const kind =
    measures.linear_stiffness && name === 'linear_stiffness' ? 'linear-stiffness' : 'angular-stiffness'
  const asked = `${name} of ${inWords(limit, kind)} (${term.criterion})`
  const best = inWords(whole.value * (total / rest), kind)
  if (rest >= allowed)
    return [`it alone cannot bring ${asked}: were it rigid, the circuit would have ${best} at most`]
  if (softest.compliance <= allowed - rest) return null
  const surfaceKind = measures.stiffness ? 'angular-stiffness' : 'linear-stiffness'
  return [
    `for ${asked} it alone would need ${inWords(1 / (allowed - rest), surfaceKind)} where it has ${inWords(1 / softest.compliance, surfaceKind)}`,
  ]
}
