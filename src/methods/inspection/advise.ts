/** What to do next: what is still to be looked at, what to mend, and by how much a value is off. */
import type { Stated } from '../../quantity/types.ts'
import type { Advice, Columns, Givens, JudgedTerm, Measures } from '../method.ts'
import { answerOf } from './answers.ts'
import { checklistOf, type Entry } from './checklist.ts'
import { isOpen } from './estimate.ts'

const listed = (entries: readonly Entry[]): string =>
  entries.map(({ name, text }) => `\`${name}\` (${text})`).join('; ')

/** In the unit of the limit that it missed. */
const off = (value: Stated, limit: Stated): string =>
  `${Number((Math.abs(value.value - limit.value) / limit.unit.factor).toPrecision(3))} ${limit.unit.text}`

const outside = (columns: Columns, entry: Entry): string[] => {
  const answer = answerOf(columns, entry)
  if (answer.form !== 'value') return []
  const { low, high } = entry
  const { stated } = answer
  if (low && stated.value < low.value)
    return [
      `\`${entry.name}\` was left at ${stated.text}, ${off(stated, low)} below its limit of ${low.text}`,
    ]
  if (high && stated.value > high.value)
    return [
      `\`${entry.name}\` was left at ${stated.text}, ${off(stated, high)} above its limit of ${high.text}`,
    ]
  return []
}

export const advise = (
  _: Measures,
  __: readonly JudgedTerm[],
  givens: Givens,
  columns: Columns = {},
): readonly Advice[] => {
  const list = checklistOf(givens.fields)
  const open = list.filter((entry) => isOpen(columns, entry))
  const bad = list.filter((entry) => answerOf(columns, entry).form === 'not-ok')
  const beyond = list.flatMap((entry) => outside(columns, entry))
  return [
    ...(open.length > 0
      ? [
          {
            text: `Still to be looked at, by somebody who did not fit it: ${listed(open)}. A further run of this card that answers the whole list closes them.`,
            measures: ['open'],
          },
        ]
      : []),
    ...(bad.length > 0
      ? [
          {
            text: `To be mended, and recorded as a rework, before it is inspected again: ${listed(bad)}.`,
            measures: ['not_ok'],
          },
        ]
      : []),
    ...(beyond.length > 0 ? [{ text: `${beyond.join('; ')}.`, measures: ['not_ok'] }] : []),
  ]
}
