/** What is open, conceded and decided on a gate: the second half of its report. */
import type { CardState, GateState, Run } from '../campaign/types.ts'
import type { ItemRecord, ReadinessRecord } from '../format/types.ts'
import { joined, list, prose, table } from './page.ts'
import { proseOf } from './prose.ts'
import { basisTable } from './readiness.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { dateWords, ITEM_WORDS, momentWords, nameWords } from './words.ts'

const isOnGate = (run: Run | undefined, states: readonly CardState[]): boolean =>
  states.some((state) => state.id === run?.card.id && state.article === run.article)

const concessionRow = (item: ItemRecord, site: Site): Rich[] => {
  const { concession, closed, raised } = item
  if (!concession) return []
  return [
    [site.link(item.id, item.title)],
    [`${nameWords(concession.criterion)} of `, site.link(concession.run)],
    [site.person(concession.agreed)],
    [momentWords(raised.when)],
    [concession.until === 'round' ? 'the round ends' : dateWords(concession.until)],
    [closed ? `closed ${momentWords(closed.when)}` : 'not closed'],
  ]
}

export const concessions = (gate: GateState, states: readonly CardState[], site: Site): Block[] => {
  const { records, runs } = site.campaign
  const own = Object.values(records.items).filter(
    ({ concession, gates }) =>
      concession &&
      (gates.includes(gate.id) ||
        isOnGate(
          runs.find((run) => run.id === concession.run),
          states,
        )),
  )
  return table(
    'Concessions on results of this gate',
    ['concession', 'accepts', 'agreed by', 'raised', 'until', 'state'],
    own.map((item) => concessionRow(item, site)),
  )
}

export const openItems = (gate: GateState, site: Site): Block[] =>
  table(
    'Open items that hold it',
    ['item', 'kind', 'owner', 'since', 'due', 'what closes it'],
    site.campaign.items
      .filter((item) => item.gates.includes(gate.id))
      .map((item) => [
        site.linked(item.title),
        [ITEM_WORDS[item.kind]],
        [site.person(item.owner)],
        [item.since],
        item.due === null ? [] : [item.due],
        site.linked(item.closes),
      ]),
  )

export const meetingBlocks = (record: ReadinessRecord, site: Site): Block[] => {
  const written = proseOf(record.body, record.source.path, site, 2)
  return [
    ...list([
      [
        site.link(record.id, momentWords(record.when)),
        ': ',
        { is: 'strong', text: record.decision },
        '; present: ',
        ...joined(record.present.map(site.person)),
      ],
      ...(record.conditions.length > 0
        ? [['Conditions: ', ...joined(record.conditions.map((id) => site.link(id)))]]
        : []),
    ]),
    ...basisTable(record, site),
    ...prose(written),
  ]
}

export const meetingsOf = (gate: GateState, site: Site): readonly ReadinessRecord[] =>
  Object.values(site.campaign.records.readiness)
    .filter((record) => record.gate === gate.id)
    .sort((a, b) => a.when.epoch - b.when.epoch)
