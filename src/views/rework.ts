/** Changes made to the article, and what each of them made worthless. */
import type { ReworkRecord } from '../format/types.ts'
import { besideRecord, isPicture } from './files.ts'
import { cell, joined, list, prose, section, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import { gainWords, trendPlot } from './trend-plot.ts'
import type { Block, Rich, View } from './view.ts'
import { dateWords, momentWords, plural } from './words.ts'

export const reworkRows = (reworks: readonly ReworkRecord[], site: Site): Rich[][] =>
  [...reworks]
    .reverse()
    .map((rework) => [
      [dateWords(rework.when.date)],
      [site.link(rework.id, rework.title)],
      joined(rework.changes.map((part) => site.link(part))),
      joined(rework.by.map(site.person)),
      rework.inspectedBy ? [site.person(rework.inspectedBy)] : ['nobody'],
    ])

export const reworksView = (site: Site): View => {
  const rows = reworkRows(site.campaign.reworks, site)
  const blocks = table('Rework', ['when', 'rework', 'parts', 'by', 'inspected by'], rows)
  return viewOf(site, {
    path: 'rework/',
    kind: 'reworks',
    title: 'What was changed on the article?',
    description: `${plural(rows.length, 'rework')}.`,
    blocks: blocks.length > 0 ? blocks : [text('Nothing was changed yet.')],
  })
}

/** Cards whose round this rework ended. */
const ended = (rework: ReworkRecord, site: Site): Rich[] =>
  site.campaign.cards.flatMap((state) => {
    const round = state.rounds.find((each) => each.begunBy?.id === rework.id)
    const card: Rich = [site.link(state.id, state.card.title), ' on ', site.link(state.article)]
    if (round) return [[...card, `: round ${round.number - 1} ended, round ${round.number} begun`]]
    return state.dueBecause?.id === rework.id ? [[...card, ': due again']] : []
  })

const serials = (rework: ReworkRecord): Block[] =>
  table(
    'Serials',
    ['part', 'out', 'in'],
    Object.entries(rework.serials).map(([part, each]) => [[part], [each.out ?? 'none'], [each.in ?? 'none']]),
  )

const unaffected = (rework: ReworkRecord, site: Site): Block[] =>
  table(
    'Said to be unaffected',
    ['card', 'why', 'agreed by'],
    rework.unaffected.map((each) => [[site.link(each.card)], [each.why], [site.person(each.agreed)]]),
  )

export const reworkView = (rework: ReworkRecord, site: Site): View => {
  const written = proseOf(rework.body, rework.source.path, site)
  const photos = rework.files.flatMap(({ file, caption }) => {
    const path = besideRecord(rework.source.path, file)
    return path === null
      ? []
      : [{ path, file: `files/${path}`, picture: isPicture(path), caption: caption || file }]
  })
  const trends = site.campaign.trends.filter((trend) => trend.reworks.some((each) => each.id === rework.id))
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Rework',
      stamps: [],
      cells: [
        cell('When', momentWords(rework.when)),
        cell('By', joined(rework.by.map(site.person))),
        cell('Inspected by', rework.inspectedBy ? site.person(rework.inspectedBy) : 'nobody'),
        cell(
          'Because of',
          rework.because.length > 0 ? joined(rework.because.map((id) => site.link(id))) : 'not said',
        ),
        cell('Parts changed', joined(rework.changes.map((part) => site.link(part))), 'full'),
      ],
    },
    ...section('ended', 'What it overtakes', list(ended(rework, site))),
    ...section('gain', 'What it gained', [
      ...(trends.length > 0
        ? [{ is: 'plots', plots: trends.map((trend) => trendPlot(trend, site, 'in full')) } as const]
        : []),
      ...list(trends.length === 1 && trends[0] ? gainWords(trends[0]) : []),
    ]),
    ...section('serials', 'Parts out and in', serials(rework)),
    ...section('unaffected', 'Cards that it leaves alone', unaffected(rework, site)),
    ...section('done', 'What was done', [
      ...prose(written),
      ...(photos.length > 0
        ? [
            {
              is: 'photos',
              photos: photos.map(({ file, picture, caption }) => ({ file, picture, caption })),
            } as const,
          ]
        : []),
    ]),
  ]
  return viewOf(site, {
    path: `rework/${rework.id}/`,
    kind: 'rework',
    title: rework.title,
    description: `Rework of ${dateWords(rework.when.date)}: ${rework.title}.`,
    blocks,
    files: [...written.files, ...photos.map((photo) => photo.path)],
  })
}
