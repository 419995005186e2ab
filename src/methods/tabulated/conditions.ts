/** What bars a pass of a measure, and what is said of the readings that it rests on. */
import type { Columns, Givens, Measures, Remark, Selection } from '../method.ts'
import { scatterOf } from './scatter.ts'
import { asChoice, type Choice, type Pick, sameReading } from './select.ts'

/** Fewer leave the scatter itself too uncertain for a guarded pass. */
const FEWEST_DOF = 3

const whole = (dof: number): string => (Number.isInteger(dof) ? String(dof) : dof.toFixed(1))

const barsOf = (columns: Columns, pick: Pick): readonly string[] => {
  const { aggregate, doubt, refused } = pick
  if (refused) return []
  const texts = doubt ? [`${aggregate.key}: ${doubt}`] : []
  const scatter = scatterOf(columns, pick)
  if (!scatter) return texts
  if (scatter.dof < FEWEST_DOF)
    texts.push(
      `${aggregate.key} rests on ${pick.rows.length} readings: their scatter has ${whole(scatter.dof)} degrees of freedom, and ${FEWEST_DOF} are needed`,
    )
  if (scatter.correlated)
    texts.push(
      `the readings behind ${aggregate.key} wander together (von Neumann ratio, 1 %): their scatter understates its uncertainty`,
    )
  return texts
}

/** Measures that rest on an aggregate, through others too. */
const restingOn = ({ plan }: Choice, key: string): readonly string[] =>
  plan.measures.filter(({ all }) => all.some((each) => each.key === key)).map(({ name }) => name)

const plural = (count: number, one: string, more: string): string =>
  count === 1 ? `one ${one}` : `${count} ${more}`

const missingNotes = (choice: Choice): readonly Remark[] => {
  const texts = [...choice.picks.values()].flatMap(({ aggregate, missing }) => {
    const { y, x } = aggregate
    const where = x ? `\`${y.name}\` or \`${x.name}\`` : `\`${y.name}\``
    return missing > 0 ? [`${plural(missing, 'row has', 'rows have')} no value of ${where}`] : []
  })
  return [...new Set(texts)].map((text) => ({ effect: 'note', text: `${text}: it is left out` }))
}

const leftOut = (choice: Choice, measures: Measures): readonly Remark[] =>
  choice.plan.measures.flatMap((measure): Remark[] => {
    if (measures[measure.name]) return []
    const reasons = measure.all.flatMap(({ key }) => choice.picks.get(key)?.refused || [])
    const same = sameReading(measure, choice.picks) || choice.misfits.get(measure.name)
    const why =
      [...new Set(same ? [...reasons, same] : reasons)].join('; ') ||
      'its formula has no value with these readings and givens'
    return [{ effect: 'note', text: `${measure.name} is left out: ${why}` }]
  })

export const conditions = (
  measures: Measures,
  columns: Columns,
  _givens: Givens,
  selection: Selection,
): readonly Remark[] => {
  const choice = asChoice(selection)
  const bars = [...choice.picks].flatMap(([key, pick]) =>
    barsOf(columns, pick).map(
      (text): Remark => ({ effect: 'bars-pass', text, measures: restingOn(choice, key) }),
    ),
  )
  return [...bars, ...missingNotes(choice), ...leftOut(choice, measures)]
}
