/** What would settle it, once judged: the biggest line of the budget of the loss. */
import { budget } from '../../quantity/quantity.ts'
import type { Advice, JudgedTerm, Measures } from '../method.ts'

const remedy = (source: string): string => {
  if (source.includes('resolution_of_'))
    return 'an indicator with a finer division (a digital one), or a longer hold'
  if (source.includes('temperature'))
    return 'a closed hangar, no sun and no hands on the tubes, time to settle, and a thermometer at the line'
  if (source.includes('barometer'))
    return 'a barometer read with each reading, or an altimeter instead of a gauge'
  if (source.includes('/drift')) return 'an indicator that drifts less'
  if (source.includes('path_not_laminar')) return 'a start nearer to the stated pressure'
  if (source.startsWith('fit:')) return 'more readings over a longer hold'
  return 'a better instrument'
}

export const advise = (measures: Measures, judged: readonly JudgedTerm[]): readonly Advice[] =>
  judged.flatMap((term) => {
    const name = term.measures.find((each) => each === 'altitude_loss' || each === 'airspeed_loss')
    const measure = name ? measures[name] : undefined
    const [biggest] = measure ? budget(measure) : []
    if (term.verdict !== 'undetermined' || !name || !biggest) return []
    return [{ text: `To settle it: ${remedy(biggest.source)}.`, measures: [name] }]
  })
