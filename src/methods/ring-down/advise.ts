/** What would settle it, once judged. */
import { budget } from '../../quantity/quantity.ts'
import type { Advice, JudgedTerm, Measures } from '../method.ts'

const remedy = (source: string): string => {
  if (source.includes('clock')) return 'a logger whose clock is better known (clock_error)'
  if (source.startsWith('fit:')) {
    return 'a larger swing over less noise, the stand and the air quiet, or several records of the same release'
  }
  return 'a better instrument'
}

export const advise = (measures: Measures, judged: readonly JudgedTerm[]): readonly Advice[] =>
  judged.flatMap((term) =>
    term.verdict !== 'undetermined'
      ? []
      : term.measures.flatMap((name) => {
          const measure = measures[name]
          const [biggest] = measure ? budget(measure) : []
          return biggest ? [{ text: `To settle it: ${remedy(biggest.source)}.`, measures: [name] }] : []
        }),
  )
