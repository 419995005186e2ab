/** The text of minutes of a readiness meeting, with the results that the decision rests on as they are now. */
import { decidingRuns } from '../campaign/pool.ts'
import type { Campaign, CardState, Run } from '../campaign/types.ts'
import { valueText } from '../campaign/value-text.ts'
import { flowText } from '../form/yaml-text.ts'
import type { GateRecord } from '../format/types.ts'
import type { Judgement, Term } from '../judge/types.ts'
import { toUnit } from '../quantity/convert.ts'
import { formatQuantity } from '../quantity/display.ts'
import { parseStated } from '../quantity/quantity-text.ts'

import { field, fileText, listField, OPEN, remark } from './new-front.ts'
import { differenceUnit } from './show.ts'
import { statusWord } from './words.ts'

export type NewReadiness = {
  readonly campaign: Campaign
  readonly gate: GateRecord
  readonly when: string
  readonly by: string | null
  /** The commit whose content was judged; null: not known, or what lies here is not committed. */
  readonly commit: string | null
  /** Why there is no commit to name. */
  readonly why: string | null
}

/** The runs that decide the newest round. */
const basisRuns = (campaign: Campaign, state: CardState): readonly Run[] => {
  const ids = state.rounds.at(-1)?.runs ?? []
  return decidingRuns(campaign.runs.filter((run) => ids.includes(run.id)))
}

const expandedText = ({ value, unit }: Term): string => {
  const { U } = formatQuantity(value, unit)
  if (U === null) return 'not known'
  const name = differenceUnit(unit).text
  return name === '1' ? U : `${U} ${name}`
}

/** Rounded to what is known of it, unless that is coarser than the last digit that then stands there. */
const writtenText = ({ value, unit }: Term): string => {
  const rounded = valueText(value, unit)
  const read = parseStated(rounded)
  if (!read.ok || Math.abs(read.value.value - value.value) <= read.value.digit) return rounded
  const figures = String(Number(toUnit(value.value, unit).toPrecision(9)))
  return unit.text === '1' ? figures : `${figures} ${unit.text}`
}

/** Of a criterion of several terms the first, as the basis is compared by that. */
const basisLine = ({ campaign, commit }: NewReadiness, run: Run, judgement: Judgement): string => {
  const [term] = judgement.terms
  const line = flowText({
    run: run.id,
    criterion: judgement.criterion,
    verdict: judgement.verdict,
    value: term ? writtenText(term) : 'not computed',
    U: term ? expandedText(term) : 'not known',
    ...(commit === null ? {} : { commit: commit.slice(0, 12) }),
    tool: campaign.tool,
  })
  return `  - ${line}`
}

const statesOf = ({ campaign, gate }: NewReadiness): CardState[] =>
  campaign.cards.filter((state) => gate.cards.includes(state.id))

const MOST = 8

const openWords = (meeting: NewReadiness): string[] => {
  const { campaign, gate } = meeting
  const state = campaign.gates.find(({ id }) => id === gate.id)
  const words = state?.words ?? []
  const more = words.length > MOST ? [`and ${words.length - MOST} more`] : []
  return [...words.slice(0, MOST), ...more].map((each) => remark(`holds: ${each}`))
}

const conditionLine = ({ campaign, gate }: NewReadiness): string[] => {
  const open = campaign.items.filter((item) => item.raisedByHand && item.gates.includes(gate.id))
  return open.length > 0 ? [remark(`conditions: ${flowText(open.map(({ id }) => id))}`)] : []
}

const basisLines = (meeting: NewReadiness): string[] => {
  const lines = statesOf(meeting).flatMap((state) => {
    const runs = basisRuns(meeting.campaign, state)
    if (runs.length === 0)
      return [`  ${remark(`${state.id} on ${state.article}: ${statusWord(state.status)}`)}`]
    return runs.flatMap((run) => run.counting.map((judgement) => basisLine(meeting, run, judgement)))
  })
  return lines.some((line) => line.startsWith('  - '))
    ? ['basis:', ...lines]
    : lines.map((line) => line.trim())
}

export const newReadinessText = (meeting: NewReadiness): string =>
  fileText(
    [
      field('gate', meeting.gate.id),
      `when: ${meeting.when}`,
      listField('present', meeting.by === null ? [OPEN] : [meeting.by, OPEN]),
      ...openWords(meeting),
      remark('go, no-go, or go with conditions'),
      `decision: ${OPEN}`,
      ...conditionLine(meeting),
      ...(meeting.why === null ? [] : [remark(`No commit is named: ${meeting.why}`)]),
      ...basisLines(meeting),
    ],
    ['What was looked at, what was said, what was decided and why.'],
  )
