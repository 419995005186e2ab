/** What a card asked for over time: from when, by whom, in which commit, reviewed or not; and the runs judged by it. */
import type { CardVersion } from '../campaign/history/types.ts'
import type { CardState, Run } from '../campaign/types.ts'
import { reviewText, shortCommit } from './history-title.ts'
import { code, joined, lineBreak, small, strong, table, text } from './page.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { dateWords, nameWords, runStamps } from './words.ts'

/** Each criterion with its formula; what differs from the state before is marked by a word. */
const criteriaWords = (version: CardVersion, before: CardVersion | undefined): Rich => {
  const lines = Object.entries(version.criteria).map(([id, accept]): Rich => {
    const old = before?.criteria[id]
    const mark = !before || old === accept ? [] : [' ', strong(old === undefined ? 'new' : 'changed')]
    return [`${nameWords(id)}: `, code(accept), ...mark]
  })
  const dropped = Object.keys(before?.criteria ?? {}).filter((id) => version.criteria[id] === undefined)
  const gone = dropped.map((id): Rich => [`${nameWords(id)}: `, strong('dropped')])
  const other = before && [...lines, ...gone].every((line) => line.length < 3)
  return joined(
    [...lines, ...gone, ...(other ? [[small('same formulas; givens, rule or instruments changed')]] : [])],
    lineBreak,
  )
}

const reviewedWords = ({ reviewed, commit }: CardVersion, site: Site): Rich => {
  if (reviewed.length > 0)
    return joined(
      reviewed.map((review) => reviewText(review, site)),
      lineBreak,
    )
  return [commit === null ? 'not landed yet' : strong('not reviewed')]
}

/** Runs whose card was in this state when they were made. */
const runsUnder = (version: CardVersion, runs: readonly Run[]): Run[] =>
  runs.filter(({ asRun }) =>
    asRun === null
      ? false
      : asRun.revision === null
        ? version.commit === null
        : version.commits.includes(asRun.revision),
  )

const runWords = (run: Run, site: Site): Rich => [
  site.link(run.id, dateWords(run.record.when.date)),
  ' ',
  ...joined(runStamps(run), ' '),
  ...(run.asRun && run.asRun.differs.length > 0 && run.asRun.verdict !== run.presentVerdict
    ? [' ', small(`as run ${run.asRun.verdict}, today ${run.presentVerdict}`)]
    : []),
]

const MOST_RUNS = 12

const runsWords = (version: CardVersion, runs: readonly Run[], site: Site): Rich => {
  const own = runsUnder(version, runs)
  if (own.length === 0) return ['none']
  const more = own.length - MOST_RUNS
  const shown = own.slice(-MOST_RUNS).reverse()
  return joined(
    [...shown.map((run) => runWords(run, site)), ...(more > 0 ? [[`and ${more} earlier ones`]] : [])],
    lineBreak,
  )
}

const versionRow = (
  version: CardVersion,
  before: CardVersion | undefined,
  runs: readonly Run[],
  site: Site,
): Rich[] => [
  version.when === null ? ['not landed yet'] : [site.at(version.when)],
  version.by === null ? [] : [site.person(version.by)],
  criteriaWords(version, before),
  reviewedWords(version, site),
  runsWords(version, runs, site),
  version.commit === null ? [] : [shortCommit(version.commit)],
]

/** Newest first. Nothing where history is not known; a card that never changed says so in its one row. */
export const cardHistory = (states: readonly CardState[], site: Site): Block[] => {
  const [first] = states
  const versions = first?.versions ?? null
  if (!first || versions === null) return []
  const runs = site.campaign.runs.filter((run) => run.card.id === first.id)
  const rows = versions.map((version, index) => versionRow(version, versions[index - 1], runs, site))
  return [
    ...(versions.length === 1 ? [text('It has judged by the same criteria ever since it was written.')] : []),
    ...table(
      'What it asked for, newest first',
      ['in force from', 'by', 'criteria', 'reviewed', 'runs made under it', 'commit'],
      rows.reverse(),
    ),
  ]
}
