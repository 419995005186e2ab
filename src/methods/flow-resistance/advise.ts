/** How much wider it must be, once judged: the drop of an orifice goes with 1/(C_d A)². */
import { missedOn, ownLimit, rounded } from '../advice-text.ts'
import type { Advice, JudgedTerm, Measures } from '../method.ts'
import { pascals, wayWords } from './words.ts'

const SQUARE_MILLIMETRE = 1e-6

/** What is seen in the curve: turbulent is a narrow place, laminar a long thin one. */
const shapeWords = (measures: Measures, suffix: string, limit: number, drop: number): string => {
  const [a, b, asked] = ['laminar_coefficient', 'turbulent_coefficient', 'required_flow'].map(
    (name) => measures[`${name}${suffix}`]?.value,
  )
  if (a === undefined || b === undefined || !asked) return ''
  const laminar = (a * asked) / drop
  if (laminar > 0.5)
    return ` ${rounded(100 * laminar)} % of the drop grows with the flow itself: look for a long thin passage, a screen or a clogged filter rather than for one narrow place.`
  const wider = Math.sqrt(drop / limit)
  const area = measures[`effective_area${suffix}`]?.value
  const to =
    area === undefined
      ? ''
      : `, from ${rounded(area / SQUARE_MILLIMETRE)} to ${rounded((area * wider) / SQUARE_MILLIMETRE)} mm²`
  return ` The effective area would have to be ${rounded(wider)} times as large${to}, and more to cover the uncertainty: look for one narrow place, a burr, tape or an insect.`
}

export const advise = (measures: Measures, judged: readonly JudgedTerm[]): readonly Advice[] =>
  missedOn(judged, 'drop_at_required').flatMap((term): Advice[] => {
    const [name = ''] = term.measures
    const drop = measures[name]?.value
    const limit = ownLimit(term, measures)
    if (drop === undefined || limit === null || !(limit > 0) || drop <= limit) return []
    const suffix = name.replace('drop_at_required', '')
    const way = wayWords(suffix.replace('_', ''))
    const beside = measures.direction_ratio?.value
    const valve =
      beside !== undefined && (beside > 2 || beside < 0.5)
        ? ' The two ways differ by more than a factor of two: a flap or a check valve is in the path.'
        : ''
    return [
      {
        text: `The drop${way ? ` ${way}` : ''} is ${rounded(drop / limit)} times what is allowed, ${pascals(drop)} for ${pascals(limit)}.${shapeWords(measures, suffix, limit, drop)}${valve}`,
        measures: [name],
      },
    ]
  })
