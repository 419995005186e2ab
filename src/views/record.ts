/** Record a run: the choice of a card, and one page a card with its steps and the form. */
import type { CardState } from '../campaign/types.ts'
import { reachId } from '../form/view.ts'
import type { CardRecord } from '../format/types.ts'
import { cell, list, prose, section, table, text, viewOf } from './page.ts'
import { stepsOf } from './plan-section.ts'
import { gaugesOf, planSentence } from './planning.ts'
import { proseOf } from './prose.ts'
import { cardTitles, formOf } from './record-form.ts'
import { stopWords } from './sheet.ts'
import { targetText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich, Target, View } from './view.ts'
import { joinedStatus, nameWords } from './words.ts'

/** `record/tank-leak/` */
export const recordPath = (card: string): Target => `record/${card}/`

export const recordLink = (card: string): Rich => [
  { is: 'link', text: 'Record a run', to: recordPath(card) },
  ', with or without network.',
]

const statesOf = (card: CardRecord, site: Site): CardState[] =>
  site.campaign.cards.filter((state) => state.id === card.id)

export const recordsView = (site: Site): View => {
  const rows = Object.values(site.campaign.records.cards).flatMap((card): Rich[][] => {
    const states = statesOf(card, site)
    if (states.length === 0) return []
    return [
      [
        [{ is: 'link', text: card.title, to: recordPath(card.id) }],
        [states.map((state) => state.article).join(', ')],
        joinedStatus(states),
      ],
    ]
  })
  const blocks: Block[] = [
    { is: 'answer', text: ['Choose the card that lies in front of you.'] },
    { is: 'record-list', cards: cardTitles(site) },
    ...(rows.length > 0
      ? table('Cards', ['card', 'on', 'status'], rows)
      : [text('No card that serves an article is written yet.')]),
  ]
  return viewOf(site, {
    path: 'record/',
    kind: 'record',
    title: 'Record a run',
    description: 'Choose a test card and record a run of it, with or without network.',
    blocks,
  })
}

const targetWords = (state: CardState): Rich[] =>
  Object.entries(state.targets).map(([name, target]) => [
    `${nameWords(name)}: `,
    { is: 'strong', text: targetText(target) },
  ])

/** What to reach on one article, in the units of the gauge. */
const reachOf = (state: CardState, several: boolean, site: Site): Block[] => {
  const gauges = gaugesOf(state, site)
  const planned = (state.plan?.text ?? []).map((each) => planSentence(each, gauges, site))
  return section(reachId(state.article), several ? `To reach on ${state.article}` : 'To reach', [
    ...list([...targetWords(state), ...planned]),
    ...stepsOf(state, gauges),
  ])
}

export const recordView = (card: CardRecord, site: Site): View[] => {
  const states = statesOf(card, site)
  const form = formOf(card, states, site)
  const [first] = states
  if (!form || !first) return []
  const written = proseOf(card.body, card.source.path, site)
  const cautions = [...card.cautions, ...(first.method?.cautions ?? [])]
  const stops = stopWords(first, gaugesOf(first, site))
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Card',
      stamps: [],
      cells: [
        cell('Card', [site.link(card.id, card.id)]),
        cell(
          'Method',
          first.method ? [site.link(`method:${first.method.id}`, first.method.title)] : card.method,
        ),
        cell('Articles', states.map((state) => state.article).join(', ')),
        cell('Owner', site.person(card.owner)),
      ],
    },
    ...(stops.length > 0 ? [{ is: 'strip', title: 'Stop at', tone: 'loud', items: stops } as const] : []),
    text({ is: 'link', text: 'Straight to the form', to: `${recordPath(card.id)}#form` }),
    ...(cautions.length > 0 ? [{ is: 'cautions', items: cautions.map(site.linked) } as const] : []),
    ...section('steps', 'Steps', [
      ...prose(written),
      ...states.flatMap((state) => reachOf(state, states.length > 1, site)),
    ]),
    { is: 'record', form },
  ]
  return [
    viewOf(site, {
      path: recordPath(card.id),
      kind: 'record',
      title: `Record a run: ${card.title}`,
      description: `Form to record a run of test card ${card.id}, with or without network.`,
      blocks,
      files: written.files,
    }),
  ]
}
