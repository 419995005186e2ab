/** Cards: what is tested next, to what load, when to stop; and why the criterion is what it is. */
import type { CardState } from '../campaign/types.ts'
import type { CardRecord, InstrumentDemand } from '../format/types.ts'
import { cardHead } from './card-head.ts'
import { cardHistory } from './history-card.ts'
import { code, list, prose, section, table, text, viewOf } from './page.ts'
import { planSection } from './plan-section.ts'
import { proseOf } from './prose.ts'
import { roundsSheet, roundsTable } from './rounds.ts'
import type { Site } from './site.ts'
import { trendPlot } from './trend-plot.ts'
import type { Block, Rich, View } from './view.ts'
import { nameWords, statusWord } from './words.ts'

export const cardsView = (site: Site): View => {
  const sheet = roundsSheet(site.campaign.cards, site)
  const run = new Set(site.campaign.cards.map((state) => state.id))
  const unused = Object.values(site.campaign.records.cards).filter((card) => !run.has(card.id))
  const blocks: Block[] = [
    ...(sheet.length > 0 ? sheet : [text('No card is written yet.')]),
    ...section(
      'unused',
      'Cards that serve no article',
      list(unused.map((card) => [site.link(card.id, card.title)])),
    ),
  ]
  return viewOf(site, {
    path: 'cards/',
    kind: 'cards',
    title: 'Which tests pass, in which round?',
    description: 'All test cards by round.',
    blocks,
  })
}

const demandText = (demand: InstrumentDemand): Rich[] => [
  demand.range ? [`${demand.range.low.text} to ${demand.range.high.text}`] : [],
  demand.uncertainty ? [`at most ${demand.uncertainty.text}`] : [],
  demand.resolution ? [`at most ${demand.resolution.text}`] : [],
  demand.drift ? [`at most ${demand.drift.text}`] : [],
]

const instrumentsAsked = (card: CardRecord): Block[] =>
  table(
    'Instruments asked for',
    ['column', 'range', 'uncertainty (95 %)', 'resolution', 'drift'],
    Object.entries(card.instruments).map(([column, demand]) => [[nameWords(column)], ...demandText(demand)]),
  )

const criteriaOf = (card: CardRecord): Block[] =>
  table(
    'Criteria',
    ['criterion', 'accepted where', 'rule', 'why'],
    card.criteria.map((criterion) => [
      [{ is: 'strong', text: nameWords(criterion.id) }],
      [code(criterion.accept)],
      [criterion.rule.text],
      [criterion.why.trim()],
    ]),
  )

const derived = (card: CardRecord): Block[] =>
  table(
    'Derived after the test',
    ['name', 'formula'],
    Object.entries(card.derive).map(([name, formula]) => [[nameWords(name)], [code(formula)]]),
  )

const givensOf = (card: CardRecord, state: CardState | undefined): Block[] => {
  const own = state ? (card.articles[state.article] ?? {}) : {}
  const fields = state?.method?.schema.givens ?? []
  const rows = Object.entries({ ...card.given, ...own }).map(([name, given]): Rich[] => {
    const value =
      given.form === 'quantity'
        ? given.stated.text
        : given.form === 'word'
          ? given.word
          : `${nameWords(given.measure)} of ${given.from}`
    const asked = card.ask.includes(name) ? 'to be measured on the day' : ''
    return [[nameWords(name)], [fields.find((field) => field.name === name)?.meaning ?? ''], [value], [asked]]
  })
  return table('Givens', ['given', 'meaning', '#value', 'on the day'], rows)
}

const articleSection = (state: CardState, card: CardRecord, site: Site): Block[] => {
  const trends = site.campaign.trends.filter(
    (trend) => trend.card === card.id && trend.article === state.article && trend.points.length > 0,
  )
  const name = state.article.replaceAll('/', '-')
  return section(`on-${name}`, `On ${state.article}: ${statusWord(state.status)}`, [
    ...planSection(state, site),
    ...section(`rounds-${name}`, 'Rounds', [
      ...(trends.length > 0
        ? [{ is: 'plots', plots: trends.map((trend) => trendPlot(trend, site)) } as const]
        : []),
      ...roundsTable(state, site),
    ]),
    ...section(`givens-${name}`, 'Givens', givensOf(card, state)),
  ])
}

export const cardView = (card: CardRecord, site: Site): View => {
  const states = site.campaign.cards.filter((state) => state.id === card.id)
  const written = proseOf(card.body, card.source.path, site)
  const blocks: Block[] = [
    ...cardHead(card, states, site),
    ...section('criteria', 'What is accepted, and why', [...criteriaOf(card), ...derived(card)]),
    ...states.flatMap((state) => articleSection(state, card, site)),
    ...section('history', 'What it asked for over time', cardHistory(states, site)),
    ...section('instruments', 'Instruments asked for', instrumentsAsked(card)),
    ...section('steps', 'Purpose, set-up and steps', prose(written)),
  ]
  return viewOf(site, {
    path: `cards/${card.id}/`,
    kind: 'card',
    title: card.title,
    description: `Test card ${card.id}: ${card.title}.`,
    blocks,
    files: written.files,
  })
}
