/** The text of a new open item: a discrepancy, an action or a concession. */
import { gatesOfCard } from '../campaign/items/item.ts'
import type { Campaign, Run } from '../campaign/types.ts'
import type { ItemRecord, Person } from '../format/types.ts'
import { field, fileText, listField, OPEN, remark } from './new-front.ts'

export const ITEM_KINDS: readonly ItemRecord['itemKind'][] = ['discrepancy', 'action', 'concession']

export type NewItem = {
  readonly campaign: Campaign
  readonly title: string
  readonly kind: ItemRecord['itemKind']
  readonly when: string
  readonly by: string | null
  /** Ids of runs, cards, instruments …, articles and parts. */
  readonly about: readonly string[]
}

const runsOf = ({ campaign, about }: NewItem): Run[] => campaign.runs.filter((run) => about.includes(run.id))

const cardsOf = (item: NewItem): string[] => [
  ...new Set([
    ...runsOf(item).map((run) => run.card.id),
    ...item.about.filter((id) => Object.hasOwn(item.campaign.records.cards, id)),
  ]),
]

const gateLines = (item: NewItem): string[] => {
  const { records } = item.campaign
  const gates = [...new Set(cardsOf(item).flatMap((card) => gatesOfCard(records, card)))]
  if (gates.length > 0) return [listField('gates', gates)]
  const all = Object.keys(records.gates)
  return all.length > 0 ? [remark(`gates: [${all.join(', ')}]`)] : []
}

const mayConcede = (people: Readonly<Record<string, Person>>): string[] =>
  Object.values(people).flatMap((person) => (person.roles.includes('concede') ? [person.id] : []))

const criteriaOf = (run: Run | undefined): string[] => {
  const failing = run?.counting.filter(({ verdict }) => verdict === 'fail') ?? []
  return (failing.length > 0 ? failing : (run?.counting ?? [])).map(({ criterion }) => criterion)
}

const concessionLines = (item: NewItem): string[] => {
  const [run] = runsOf(item)
  const criteria = criteriaOf(run)
  const [only, second] = criteria
  const persons = mayConcede(item.campaign.records.people)
  return [
    ...(second ? [remark(`criterion: ${criteria.join(' or ')}`)] : []),
    field('criterion', only && !second ? only : OPEN),
    field('run', run?.id ?? OPEN),
    remark(
      persons.length > 0
        ? `may concede: ${persons.join(', ')}`
        : 'nobody has the role concede in people.yaml',
    ),
    `agreed: ${OPEN}`,
    remark('until: round, or a date'),
    'until: round',
  ]
}

export const newItemText = (item: NewItem): string => {
  const [card] = cardsOf(item)
  const owner = (card && item.campaign.records.cards[card]?.owner) || item.by || OPEN
  return fileText(
    [
      field('title', item.title),
      `kind: ${item.kind}`,
      `raised: {when: ${item.when}, by: ${item.by ?? OPEN}}`,
      listField('about', item.about),
      ...gateLines(item),
      ...(item.kind === 'concession' ? concessionLines(item) : []),
      field('owner', owner),
      ...(item.kind === 'concession' ? [] : [remark(`due: ${OPEN}`)]),
    ],
    ['What was seen, where, and what it may mean.'],
  )
}
