/** What bars a pass: the target not reached, or not held, with the rule's confidence; a set that nothing shows. */
import { tCdf, tQuantile } from '../../quantity/distribution.ts'
import { effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { estimateMovement } from './movement.ts'
import { holdOf } from './readings.ts'
import type { Choice } from './select.ts'

const FEWEST_DOF = 3
const MOVEMENT = ['permanent_set', 'recovery']
const STIFFNESS = ['stiffness_before', 'stiffness_after', 'stiffness_change']

const bar = (text: string, measures?: readonly string[]): Remark => ({ effect: 'bars-pass', text, measures })
const percent = (share: number): string => `${Number((100 * share).toPrecision(5))} %`

/** Every name under which measures of one station appear. */
const namesOf = (measures: Measures, stems: readonly string[], suffix: string): string[] =>
  Object.keys(measures).filter((name) => stems.some((stem) => name === stem || name === `${stem}_${suffix}`))

const reached = (measures: Measures, givens: Givens, choice: Choice, p: number): Remark[] => {
  const ratio = measures.peak_ratio
  const hold = holdOf(givens)
  const touched = choice.peakHold !== null
  const touch = `a peak-hold scale shows that the load was touched, not that it was held for ${hold} s`
  if (!ratio) return [bar(touched ? touch : `the readings do not show a load that was held for ${hold} s`)]
  const u = standardUncertainty(ratio)
  if (u === null)
    return [
      bar(
        `whether the target was reached is not known: ${ratio.why[0] ?? 'the accuracy of the scale is not stated'}`,
      ),
    ]
  const asked = 1 - (givens.numbers.tolerance ?? 0)
  const room = ratio.value - asked
  const dof = effectiveDof(ratio)
  const probability = u > 1e-12 ? tCdf(room / u, dof) : room >= -1e-12 ? 1 : 0
  if (probability >= p) return []
  if (touched) return [bar(touch)]
  const needed = asked + tQuantile(p, dof) * u
  return [
    bar(
      `the target was not reached with ${percent(p)} confidence: ${percent(ratio.value)} of it was held for ${hold} s, and ${percent(needed)} is needed with this scale`,
    ),
  ]
}

/** With a clock the sustained peak covers the hold; without one nothing does. */
const timed = (givens: Givens, choice: Choice): Remark[] =>
  choice.timed === 'none' && holdOf(givens) > 0
    ? [
        bar(
          `nothing shows that the load was held for ${holdOf(givens)} s: read \`time\`, or write how long each step was \`held\``,
        ),
      ]
    : []

const movement = (measures: Measures, columns: Columns, givens: Givens, choice: Choice): Remark[] =>
  choice.channels.flatMap((channel) => {
    const { name, suffix, cycles } = channel
    const found = estimateMovement(columns, givens, choice.peak, channel)
    const bothWays = cycles?.before.length === 2
    const set = namesOf(measures, MOVEMENT, suffix)
    const remarks: Remark[] = []
    if (givens.words.play === 'present' && !bothWays)
      remarks.push(
        bar(
          `the system has play or friction, and \`${name}\` was not read in small cycles in both directions before and after: its permanent set is not known`,
          [...MOVEMENT, ...MOVEMENT.map((stem) => `${stem}_${suffix}`)],
        ),
      )
    else if (!bothWays && givens.words.play === undefined && set.length > 0)
      remarks.push({
        effect: 'note',
        text: `the set of \`${name}\` is the shift of the zero reading, which holds for a system without play and friction`,
      })
    const deflection = measures[choice.channels.length > 1 ? `peak_deflection_${suffix}` : 'peak_deflection']
    if (deflection && deflection.parts === null)
      remarks.push(
        bar(
          `the uncertainty of \`${name}\` is not known: ${deflection.why[0] ?? 'the accuracy of its gauge is not stated'}`,
          set,
        ),
      )
    if (cycles && found.cycleDof < FEWEST_DOF)
      remarks.push(
        bar(
          `the cycles of \`${name}\` leave ${found.cycleDof} degrees of freedom, and ${FEWEST_DOF} are needed: read more steps`,
          namesOf(measures, bothWays ? [...MOVEMENT, ...STIFFNESS] : STIFFNESS, suffix),
        ),
      )
    return remarks
  })

export const conditions = (
  measures: Measures,
  columns: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const choice = selection as Choice
  return [
    ...reached(measures, givens, choice, p),
    ...timed(givens, choice),
    ...movement(measures, columns, givens, choice),
  ]
}
