/** What bars a pass: a scale that may not be pressed. */
import { tCdf } from '../../quantity/distribution.ts'
import { effectiveDof, standardUncertainty } from '../../quantity/quantity.ts'
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import type { Choice } from './select.ts'

const grams = (mass: number): string => `${Number((1000 * mass).toPrecision(3))} g`
const percent = (p: number): string => `${Number((100 * p).toPrecision(5))} %`

const pressed = (measures: Measures, choice: Choice, p: number): Remark[] => {
  const load = measures.least_load
  const name = choice.points[choice.lightest]?.name.replaceAll('_', ' ') ?? ''
  if (!load) return []
  const u = standardUncertainty(load)
  const bar = (text: string): Remark[] => [{ effect: 'bars-pass', text }]
  if (u === null)
    return bar(
      `whether the surface rests on the scale at ${name} is not known: ${load.why[0] ?? 'its accuracy is not stated'}`,
    )
  const probability = u > 0 ? tCdf(load.value / u, effectiveDof(load)) : load.value > 0 ? 1 : 0
  if (probability >= p) return []
  return bar(
    `the scale at ${name} shows ${grams(load.value)}, which is not above zero with ${percent(p)} confidence: the surface may hang free of it, and its moment is then not measured. Lay a test weight on it and enter that as tare`,
  )
}

export const conditions = (
  measures: Measures,
  _: Columns,
  givens: Givens,
  selection: Selection,
  p: number,
): readonly Remark[] => {
  const choice = selection as Choice
  const said: string[] = []
  const { tilt, cg_height: height } = givens.numbers
  if (tilt === undefined || height === undefined)
    said.push(
      'the chord line is taken as level and the centre of gravity as on it: `tilt` and `cg_height` are not given',
    )
  if (choice.spread.dof < 2)
    said.push(
      'no point was read three times, so hinge friction does not show in the uncertainty: lift off, lower, tap, read again',
    )
  if (givens.numbers.chord === undefined) said.push('`chord` is not given, so no balance ratio is')
  return [...pressed(measures, choice, p), ...said.map((text) => ({ effect: 'note' as const, text }))]
}
