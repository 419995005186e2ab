/** What would settle it, once judged: the biggest line of the budget of the leak, and by how much it must shrink. */
import { budget, expanded } from '../../quantity/quantity.ts'
import type { Advice, JudgedTerm, Measures } from '../method.ts'
import { perMinute } from './words.ts'

const times = (factor: number): string => `${Number(factor.toPrecision(2))} times`

/** What to do about the biggest line; the factor is by how much U is too big. */
const remedy = (source: string, factor: number): string => {
  const longer = `a hold ${times(factor)} as long`
  if (source.includes('resolution_of_')) return `a gauge with a finer digit, or ${longer}`
  if (source.includes('temperature')) {
    return `${longer}, the article shaded and left to settle, or a smaller temperature_error (sensor in the gas, or several on the skin)`
  }
  if (source.includes('barometer')) return `a barometer read with each reading, or ${longer}`
  if (source.includes('/drift')) return 'a gauge that drifts less: a longer hold does not help'
  if (source.startsWith('fit:')) return `more readings over ${longer}`
  if (source.includes('path_not_laminar')) return 'a pressure that stays nearer to the test pressure'
  if (source.includes('volume')) return 'a better known volume'
  return 'a better instrument'
}

const ofTerm = (measures: Measures, term: JudgedTerm): Advice[] => {
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
  if (term.verdict === 'undetermined' && biggest && direct) {
    const room = Math.abs(limit - leak.value)
    const factor = Math.max(1.1, U / Math.max(room, limit / 4))
    advice.push({ text: `To settle it: ${remedy(biggest.source, factor)}.`, measures: ['leak_rate'] })
  }
  return advice
}

export const advise = (measures: Measures, judged: readonly JudgedTerm[]): readonly Advice[] =>
  judged.flatMap((term) => ofTerm(measures, term))
