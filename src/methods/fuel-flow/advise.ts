/** How much flow is missing, once judged, and what head alone would make up for it. */
import { missedOn, rounded } from '../advice-text.ts'
import type { Advice, Givens, JudgedTerm, Measures } from '../method.ts'

const LITRES_A_MINUTE = 60_000

/**
 * Head drives a flow that a narrow place holds back as its square root, and one through a long thin line in proportion:
 * what the head must become lies between ratio^−1 and ratio^−2 times what it was.
 */
const headWords = (measures: Measures, givens: Givens, ratio: number): string => {
  const head = measures.lowest_head?.value
  if (givens.words.feed !== 'gravity' || head === undefined || !(head > 0)) return ''
  const [least, most] = [head / ratio, head / ratio ** 2].map((value) => rounded(1000 * value))
  return ` By head alone it would take ${least} mm (long thin line) to ${most} mm (one narrow place) where it had ${rounded(1000 * head)} mm: look for the narrow place first (filter, finger strainer, cock, hose, vent).`
}

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
): readonly Advice[] => {
  const late = [...missedOn(judged, 'late_ratio'), ...missedOn(judged, 'late_flow')].length > 0
  const whole = [...missedOn(judged, 'flow_ratio'), ...missedOn(judged, 'flow')].length > 0
  const name = late ? 'late_ratio' : 'flow_ratio'
  const ratio = measures[name]?.value
  const asked = measures.required_flow?.value
  if (!(late || whole) || ratio === undefined || !(ratio > 0) || ratio >= 1) return []
  const missing = asked === undefined ? '' : `, ${rounded((1 - ratio) * asked * LITRES_A_MINUTE)} L/min`
  const change = measures.flow_change?.value
  const falling =
    change !== undefined && change < -0.05
      ? ' It fell off in the second half: see that the vent is open, for a tank that draws a vacuum does that.'
      : ''
  return [
    {
      text: `${rounded(100 * (1 - ratio))} % of what is asked is missing${missing}.${headWords(measures, givens, ratio)}${falling}`,
      measures: [name],
    },
  ]
}
