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
  const named = `the softest segment is ${softest.from.replaceAll('_', ' ')} to ${softest.to.replaceAll('_', ' ')}, with ${share} of the compliance`
  const concerning = missed.filter((term) => term.measures.some((name) => measures[name]))
  const needs = concerning.flatMap((term) => needed(term, measures, total, softest) ?? [])
  const text = [named, ...needs].join('; ')
  return concerning.length === 0 ? [] : [{ text, measures: [`compliance_${softest.from}_${softest.to}`] }]
}

/** The stiffness of the whole circuit that would just meet the criterion: worked out, or the limit where it is one of the stiffness itself. */
const wanted = (term: JudgedTerm, name: string, value: number): number | null => {
  const worked = term.needed?.[name]
  if (worked !== undefined) return worked
  const direct = term.measures.length === 1 && Math.abs(term.value - value) <= 1e-9 * Math.abs(value)
  return direct && term.direction === 'above' ? (term.limits[0] ?? null) : null
}

/** Only where the criterion asks for a stiffer circuit than this one. */
const needed = (term: JudgedTerm, measures: Measures, total: number, softest: Segment): string[] | null => {
  const name = WHOLE.find((each) => term.measures.includes(each))
  const whole = name && measures[name]
  const limit = whole ? wanted(term, name, whole.value) : null
  if (!name || !whole || limit === null || !(limit > whole.value)) return null
  // The limit as a compliance in the terms of the segments: whole circuit and segments are both known there.
  const allowed = total * (whole.value / limit)
  const rest = total - softest.compliance
  const kind = name === 'linear_stiffness' ? 'linear-stiffness' : 'angular-stiffness'
  const plain = (text: string) => text.replaceAll('_', ' ')
  const asked = `the ${plain(name)} of ${inWords(limit, kind)} that “${plain(term.criterion)}” asks for`
  const best = inWords(whole.value * (total / rest), kind)
  if (rest >= allowed)
    return [`it alone cannot bring ${asked}: were it rigid, the circuit would have ${best} at most`]
  const segmentKind = measures.stiffness ? 'angular-stiffness' : 'linear-stiffness'
  const [must, has] = [1 / (allowed - rest), 1 / softest.compliance].map((each) => inWords(each, segmentKind))
  return [`for ${asked} it alone would need ${must} where it has ${has}, and more to cover the uncertainty`]
}
