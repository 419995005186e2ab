/** The sheet of a card and article, for the hangar: what to reach, when to stop, and boxes to write in. One page where it fits. */
import { plannedColumns } from '../campaign/plan/gauges.ts'
import type { CardState } from '../campaign/types.ts'
import { NOT_KNOWN, shortCommit } from './history-title.ts'
import { cell, list, section, strong, viewOf } from './page.ts'
import { type Gauges, gaugesOf, planSentence, stopText } from './planning.ts'
import { proseOf } from './prose.ts'
import { boxesBelow, boxesOnTop } from './sheet-boxes.ts'
import { writingTables } from './sheet-table.ts'
import { targetText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich, Target, View } from './view.ts'
import { nameWords } from './words.ts'

/** `cards/tank-leak/sheet/wing-left-tank/`; without the article where the card serves only one. */
export const sheetPath = ({ card, article }: CardState): Target =>
  Object.keys(card.articles).length > 1
    ? `cards/${card.id}/sheet/${article.replaceAll('/', '-')}/`
    : `cards/${card.id}/sheet/`

/** Stop values in the units of the gauge; as written where the column is none of the method's. */
export const stopWords = ({ card }: CardState, gauges: Gauges): Rich[] =>
  Object.entries(card.stopAt).map(([name, limit]) => {
    const field = gauges.fields.find((each) => each.name === name)
    const unit = field ? gauges.unit(name, field.kind) : null
    const shown = unit ? stopText(limit, unit) : limit.text
    return [strong(`${nameWords(name)} ${shown}`), ', never beyond.']
  })

const targetWords = (state: CardState): Rich[] =>
  Object.entries(state.targets).map(([name, target]) => [`${nameWords(name)}: `, strong(targetText(target))])

/** The newest commit of the main line that changed the card: what a run taken from this sheet names. */
const revisionInHand = ({ versions }: CardState): Rich => {
  if (versions === null) return [NOT_KNOWN]
  const commit = versions.at(-1)?.commits.at(-1)
  return commit === undefined ? ['not landed yet'] : [shortCommit(commit)]
}

const titleBlock = (state: CardState, site: Site): Block => ({
  is: 'title-block',
  label: 'Sheet',
  stamps: [],
  cells: [
    cell('Campaign', site.title),
    cell('Card', state.card.id),
    cell('Revision of the card', revisionInHand(state)),
    cell('Article', state.article),
    cell('Method', state.method?.title ?? state.card.method),
    cell('Round', String(state.round)),
    cell('Owner', site.person(state.card.owner)),
    cell('Page of the card', `cards/${state.card.id}/`),
  ],
})

export const sheetView = (state: CardState, site: Site): View => {
  const { card, article, method } = state
  const gauges = gaugesOf(state, site)
  const written = proseOf(card.body, card.source.path, site)
  const cautions = [...card.cautions, ...(method?.cautions ?? [])]
  const fields = method ? plannedColumns(gauges.bench, { ...method.schema, columns: gauges.fields }) : []
  const planned = (state.plan?.text ?? []).map((text) => planSentence(text, gauges, site))
  const stops = stopWords(state, gauges)
  const blocks: Block[] = [
    titleBlock(state, site),
    ...(stops.length > 0 ? [{ is: 'strip', title: 'Stop at', tone: 'loud', items: stops } as const] : []),
    {
      is: 'beside',
      blocks: [
        ...section(
          'cautions',
          'Cautions',
          cautions.length > 0 ? [{ is: 'cautions', items: cautions.map(site.linked) }] : [],
        ),
        ...section('reach', 'To reach', list([...targetWords(state), ...planned])),
        ...(written.html.trim() === '' ? [] : [{ is: 'prose', html: written.html } as const]),
      ],
    },
    boxesOnTop(state, fields),
    writingTables(state, fields, gauges),
    boxesBelow,
  ]
  return viewOf(site, {
    path: sheetPath(state),
    kind: 'sheet',
    title: `${card.title}: ${article}`,
    description: `Sheet to print of test card ${card.id} on ${article}.`,
    blocks,
    files: written.files,
  })
}
