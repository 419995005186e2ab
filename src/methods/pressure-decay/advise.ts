/** What would settle it, once judged: the biggest line of the budget of the leak, and by how much it must shrink. */
import { budget, expanded } from '../../quantity/quantity.ts'
import type { Advice, Givens, JudgedTerm, Measures } from '../method.ts'
import { equivalentHole } from './hole.ts'
import { perMinute } from './words.ts'

const times = (factor: number): string => `${Number(factor.toPrecision(2))} times`

/** A hold longer than by so much is no advice. */
const LONGEST = 5

/** What to do about the biggest line; the factor is by how much U is too big. */
const remedy = (source: string, factor: number): string => {
  const longer = factor <= LONGEST ? [`a hold ${times(factor)} as long`] : []
  const either = (...ways: readonly string[]) => [...ways, ...longer].join(', or ')
  if (source.includes('resolution_of_')) return either('a gauge with a finer digit')
  if (source.includes('temperature')) {
    return either(
      'the article shaded and left to settle',
      'a smaller temperature_error (sensor in the gas, or several on the skin)',
    )
  }
  if (source.includes('barometer')) return either('a barometer read with each reading')
  if (source.includes('/drift')) return 'a gauge that drifts less (a longer hold does not help)'
  if (source.startsWith('fit:')) return either('more readings')
  if (source.includes('path_not_laminar')) return 'a pressure that stays nearer to the test pressure'
  if (source.includes('volume')) return 'a better known volume'
  return 'a better instrument'
}

const MILLIMETRE = 1e-3
const PER_DAY = 86_400 * 1e6

/** What a leak that failed is like, to know what to look for: one hole, and the liquid that would seep through it. */
const likeness = (measures: Measures, leak: number, givens: Givens): string => {
  const hole = equivalentHole(leak, givens) / MILLIMETRE
  const like = `It leaks like one sharp-edged round hole of ${hole.toPrecision(2)} mm, or like many smaller ones`
  const seep = measures.liquid_leak?.value
  if (seep === undefined)
    return `${like}. With liquid_viscosity and liquid_head given, the liquid that would seep is worked out too.`
  return `${like}; were it one narrow path, the liquid would seep at ${perMinute(seep)}, ${Number((seep * PER_DAY).toPrecision(2))} cm³ a day.`
}

const ofTerm = (measures: Measures, term: JudgedTerm, givens: Givens): Advice[] => {
  const leak = measures.leak_rate
  const limit = term.limits[0]
  const U = leak ? expanded(leak)?.U : undefined
  if (!leak || limit === undefined || U === undefined || !term.measures.includes('leak_rate')) return []
  const lines = budget(leak)
  const digits = lines.filter((line) => line.source.includes('resolution_of_'))
  const digitU = 2 * Math.hypot(...digits.map((line) => line.u))
  const advice: Advice[] = []
  // A term may be a formula over the leak: only where it is the leak itself is its limit one of the leak.
  const direct = Math.abs(term.value - leak.value) <= 1e-9 * Math.abs(leak.value)
  if (direct && digitU > limit) {
    advice.push({
      text: `The instruments are too coarse: their digits alone are ±${perMinute(digitU)} against a limit of ${perMinute(limit)}; they must be ${times((4 * digitU) / limit)} finer, or the hold that much longer.`,
      measures: ['leak_rate'],
    })
  }
  const [biggest] = lines
  if (term.verdict === 'fail' && direct && leak.value > limit) {
    advice.push({ text: likeness(measures, leak.value, givens), measures: ['leak_rate'] })
  }
  if (term.verdict === 'undetermined' && biggest && direct) {
    const room = Math.abs(limit - leak.value)
    const factor = Math.max(1.1, U / Math.max(room, limit / 4))
    advice.push({ text: `To settle it: ${remedy(biggest.source, factor)}.`, measures: ['leak_rate'] })
  }
  return advice
}

export const advise = (
  measures: Measures,
  judged: readonly JudgedTerm[],
  givens: Givens,
): readonly Advice[] => judged.flatMap((term) => ofTerm(measures, term, givens))
