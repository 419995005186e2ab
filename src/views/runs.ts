/** All runs, newest first, by month; every run has its page, void and stopped ones too. */
import type { Run } from '../campaign/types.ts'
import { joined, lineBreak, list, section, small, table, text, viewOf } from './page.ts'
import { runResults } from './rounds.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'
import { dateWords, monthWords, plural, runStamps } from './words.ts'

export const runsTable = (runs: readonly Run[], site: Site, caption = 'Runs'): Block[] =>
  table(
    caption,
    ['run', 'card, article', '#round', 'results', 'verdict', 'by'],
    runs.map((run): Rich[] => [
      [site.link(run.id, `${dateWords(run.record.when.date)}, ${run.record.when.clock}`)],
      [site.link(run.card.id, run.card.title), lineBreak, small(site.link(run.article))],
      [String(run.round)],
      runResults(run),
      joined(runStamps(run), ' '),
      joined(run.record.by.map(site.person)),
    ]),
  )

const monthOf = (run: Run): string => run.record.when.date.slice(0, 7)

/** The newest months that fit on one page are on it; the others have pages of their own. */
const MOST_ON_FIRST = 60

export const runsViews = (site: Site): View[] => {
  const newest = [...site.campaign.runs].reverse()
  const shown = new Set(newest.map((run) => run.id))
  const months = [...new Set(newest.map(monthOf))]
  const single = newest.length <= MOST_ON_FIRST
  const monthPages = single
    ? []
    : months.map((month) =>
        monthView(
          month,
          newest.filter((run) => monthOf(run) === month),
          site,
        ),
      )
  const index: Rich[] = months.map((month) => [
    { is: 'link', text: monthWords(month), to: `runs/month/${month}/` },
    `: ${plural(newest.filter((run) => monthOf(run) === month).length, 'run')}`,
  ])
  const broken = Object.values(site.campaign.records.runs).filter((record) => !shown.has(record.id))
  const blocks: Block[] = [
    ...(newest.length === 0
      ? [text('No run is recorded yet.')]
      : runsTable(newest.slice(0, MOST_ON_FIRST), site)),
    ...(single ? [] : section('months', 'All runs by month', list(index))),
    ...section(
      'not-shown',
      'Runs that have no page',
      list(broken.map((record) => [`${record.id}: its card has an error`])),
    ),
  ]
  const first = viewOf(site, {
    path: 'runs/',
    kind: 'runs',
    title: 'What was tested, and what came out?',
    description: `${newest.length} runs.`,
    blocks,
  })
  return [first, ...monthPages]
}

const monthView = (month: string, runs: readonly Run[], site: Site): View =>
  viewOf(site, {
    path: `runs/month/${month}/`,
    kind: 'runs',
    title: `Runs of ${monthWords(month)}`,
    description: `${runs.length} runs of ${monthWords(month)}.`,
    blocks: runsTable(runs, site),
  })
