/** The text of a new rework record: what is changed, what it would overtake, and why perhaps. */
import { touches } from '../campaign/parts.ts'
import type { Campaign } from '../campaign/types.ts'
import { flowText } from '../form/yaml-text.ts'
import { field, fileText, listField, OPEN, remark } from './new-front.ts'
import type { OvertakenCard, Overtakes } from './overtakes.ts'
import { statusWord } from './words.ts'

export type NewRework = {
  readonly campaign: Campaign
  readonly title: string
  readonly when: string
  readonly by: string | null
  readonly changes: readonly string[]
  readonly because: readonly string[]
  /** What it would overtake, a part each. */
  readonly overtakes: readonly Overtakes[]
}

/** Runs that fail and items raised by hand on what is changed. */
const reasons = ({ campaign, changes }: NewRework): string[] => {
  const here = (part: string): boolean => changes.some((change) => touches(change, part))
  return campaign.items.flatMap((item) => {
    if (!item.about.some(here)) return []
    if (item.raisedByHand && item.kind !== 'concession') return [item.id]
    return item.kind === 'failed-criterion' ? item.about.slice(-1) : []
  })
}

const becauseLine = (rework: NewRework): string[] => {
  if (rework.because.length > 0) return [listField('because', rework.because)]
  const found = [...new Set(reasons(rework))]
  return found.length > 0 ? [remark(`because: ${flowText(found)}`)] : []
}

const serialLine = ({ campaign, changes }: NewRework): string[] =>
  changes.flatMap((part) => {
    const serial = campaign.records.articles[part]?.serial
    return serial === undefined ? [] : [remark(`serials: ${flowText({ [part]: { out: serial, in: OPEN } })}`)]
  })

const named = ({ card, article, status }: OvertakenCard): string =>
  `${card} on ${article} (${statusWord(status)})`

const overtakesLines = ({ overtakes }: NewRework): string[] => {
  const all = overtakes.flatMap(({ passes, others }) => [...passes, ...others])
  const cards = [...new Map(all.map((each) => [`${each.card} ${each.article}`, each])).values()]
  const [first] = cards
  if (!first) return [remark('It overtakes no result.')]
  return [
    remark(`It overtakes: ${cards.map(named).join(', ')}`),
    remark('Where it cannot have touched one of these:'),
    remark(`unaffected: ${flowText([{ card: first.card, why: OPEN, agreed: OPEN }])}`),
  ]
}

/** Lines that may be of use stand there as comments; what must be written is marked `…`. */
export const newReworkText = (rework: NewRework): string =>
  fileText(
    [
      field('title', rework.title),
      `when: ${rework.when}`,
      listField('by', rework.by === null ? [] : [rework.by]),
      `inspected-by: ${OPEN}`,
      listField('changes', rework.changes),
      ...becauseLine(rework),
      ...serialLine(rework),
      ...overtakesLines(rework),
    ],
    ['What was found, what was done, by which drawing, with what.', '', '## Put back', `- ${OPEN}`],
  )
