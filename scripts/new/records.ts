/** New records of the other kinds: a rework, an open item, minutes of a readiness meeting. */
import { afterRework } from '../../src/campaign/what-if.ts'
import { slug, timeName } from '../../src/views/new-front.ts'
import { ITEM_KINDS, newItemText } from '../../src/views/new-item.ts'
import { newReadinessText } from '../../src/views/new-readiness.ts'
import { newReworkText } from '../../src/views/new-rework.ts'
import { overtakesOf } from '../../src/views/overtakes.ts'
import { partNames, unknownName } from '../../src/views/part-names.ts'
import type { Draft, NewContext } from './context.ts'

const NO_NAME = 'Nothing in the title can stand in the name of a file; name it with --id.'

const ids = ({ campaign }: NewContext, kinds?: readonly string[]): string[] =>
  campaign.records.seen.flatMap(({ id, kind }) => (!kinds || kinds.includes(kind) ? [id] : []))

/** What is said of the first name that is not among the known ones. */
const unknownAmong = (what: string, names: readonly string[], known: readonly string[]): string | null => {
  const stranger = names.find((name) => !known.includes(name))
  return stranger === undefined ? null : unknownName(what, stranger, known)
}

export const newRework = (
  context: NewContext,
  title: string,
  changes: readonly string[],
  because: readonly string[],
): Draft | string => {
  const { campaign, input, when, by, id } = context
  if (changes.length === 0) return 'Say what it changes: --changes part,part'
  const wrong =
    unknownAmong('article or part', changes, partNames(campaign.records)) ??
    unknownAmong('run or item', because, ids(context, ['run', 'item']))
  if (wrong) return wrong
  const name = id ?? (slug(title) && `${timeName(when)}-${slug(title)}`)
  if (name === '') return NO_NAME
  const after = afterRework(input, changes)
  const overtakes = changes.map((part) => overtakesOf(part, campaign, after))
  const text = newReworkText({ campaign, title, when, by, changes, because, overtakes })
  return { folder: 'records/rework', id: name, text, notes: [] }
}

export const newItem = (
  context: NewContext,
  title: string,
  kind: string | undefined,
  about: readonly string[],
): Draft | string => {
  const { campaign, when, by, id } = context
  const itemKind = ITEM_KINDS.find((each) => each === kind)
  if (!itemKind) {
    const choice = `--kind ${ITEM_KINDS.join(', --kind ')}`
    return kind === undefined
      ? `Say what kind of item it is: ${choice}`
      : `There is no kind ${kind}: ${choice}`
  }
  const fitted = campaign.runs.flatMap((run) => run.record.fitted.map((each) => `${run.id}#${each.id}`))
  const wrong = unknownAmong('record or part', about, [
    ...ids(context),
    ...fitted,
    ...partNames(campaign.records),
  ])
  if (wrong) return wrong
  const name = id ?? slug(title)
  if (name === '') return NO_NAME
  const text = newItemText({ campaign, title, kind: itemKind, when, by, about })
  return { folder: 'records/items', id: name, text, notes: [] }
}

/** The commit that a reader would have to look at to see the same. */
const judgedCommit = ({ input }: NewContext): { commit: string | null; why: string | null } => {
  const { history } = input
  if (!history || history.state === 'unknown')
    return { commit: null, why: history?.message ?? 'the history was not read' }
  if (history.uncommitted.size > 0)
    return { commit: null, why: 'records lie here that are not committed; commit them first' }
  return { commit: history.head, why: null }
}

export const newReadiness = (context: NewContext, gateId: string): Draft | string => {
  const { campaign, when, by, id } = context
  const gate = campaign.records.gates[gateId]
  if (!gate) return unknownName('gate', gateId, Object.keys(campaign.records.gates))
  const judged = judgedCommit(context)
  return {
    folder: 'records/readiness',
    id: id ?? `${timeName(when)}-${gateId}`,
    text: newReadinessText({ campaign, gate, when, by, ...judged }),
    notes: judged.why === null ? [] : [`The basis names no commit: ${judged.why}.`],
  }
}
