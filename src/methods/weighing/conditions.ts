/** What bars a pass: a point that may not rest on its scale, scales that disagree, no limit at this weight. */
import { tCdf } from '../../quantity/distribution.ts'
import { coverageFactor, effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { envelopeOf, limitsAt } from './envelope.ts'
import { words } from './names.ts'
import type { Choice } from './select.ts'

const kilograms = (mass: number): string => `${Number(mass.toPrecision(4))} kg`
const millimetres = (length: number): string => `${Number((1000 * length).toPrecision(2))} mm`
const percent = (p: number): string => `${Number((100 * p).toPrecision(5))} %`

const resting = (measures: Measures, choice: Choice, p: number): Remark[] =>
  choice.points.flatMap((point) => {
    const load = measures[`at_${point}`]
    const u = load ? standardUncertainty(load) : null
    if (!load) return []
    if (u === null)
      return [
        {
          effect: 'bars-pass' as const,
          text: `what rests on the scale under ${words(point)} is not known: ${load.why[0] ?? 'the accuracy of the scale is not stated'}`,
        },
      ]
    const probability = u > 0 ? tCdf(load.value / u, effectiveDof(load)) : load.value > 0 ? 1 : 0
    if (probability >= p) return []
    return [
      {
        effect: 'bars-pass' as const,
        text: `the scale under ${words(point)} shows ${kilograms(load.value)}, which is not above zero with ${percent(p)} confidence: it may not rest there, and something else carries it`,
      },
    ]
  })

const scales = (measures: Measures, choice: Choice, p: number): Remark[] => {
  const difference = measures.scale_difference
  const u = difference ? standardUncertainty(difference) : null
  if (!difference || !choice.apart || !u) return []
  // The widest of so many differences: each alone would be called wrong once in twenty (Bonferroni).
  const allowed = coverageFactor(difference, 1 - (1 - Math.max(p, 0.95)) / choice.pairs) * u
  if (Math.abs(difference.value) <= allowed) return []
  const [a, b] = choice.apart
  return [
    {
      effect: 'bars-pass',
      text: `under ${words(a.point)}, ${words(a.column)} shows ${kilograms(difference.value)} more than ${words(b.column)}, and their uncertainty allows ${kilograms(allowed)}: one of them is wrong, or it did not stand free`,
    },
  ]
}

const limits = (measures: Measures, givens: Givens): Remark[] => {
  const envelope = envelopeOf(givens)
  const { weight, cg } = measures
  if (!envelope || !weight || !cg || limitsAt(envelope, weight.value, cg.value)) return []
  return [
    {
      effect: 'bars-pass',
      text: `the envelope has no limits of the centre of gravity at ${kilograms(weight.value)}`,
    },
  ]
}

const notes = (measures: Measures, givens: Givens, choice: Choice): Remark[] => {
  const { pitch = 0, cg_height: height = 0 } = givens.numbers
  const shift = height * Math.tan(pitch)
  const said: string[] = []
  if (measures.cg && Math.abs(shift) >= 0.0005)
    said.push(
      `off level by ${Number(((pitch * 180) / Math.PI).toPrecision(3))}°: ${millimetres(shift)} were taken off the arm of the centre of gravity`,
    )
  if (choice.spread.dof < 2)
    said.push(
      'no point was read three times, so how well the weighing repeats is not in the uncertainty: roll off, zero, roll on again',
    )
  if (!measures.cg) said.push('an arm is missing, so no centre of gravity is given')
  return said.map((text) => ({ effect: 'note', text }))
}

export const conditions = (
  measures: Measures,
  _: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const choice = selection as Choice
  return [
    ...resting(measures, choice, p),
    ...scales(measures, choice, p),
    ...limits(measures, givens),
    ...notes(measures, givens, choice),
  ]
}
