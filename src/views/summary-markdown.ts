/** The summary of a branch as Markdown, for a pull request: short where there is little to say, never too long. */
import type { Problem } from '../problems/types.ts'
import {
  boundedText,
  markdownCode as code,
  type Section,
  tableHead,
  tableRow,
  markdownText as text,
} from './markdown.ts'
import type { CriterionLine, Detail, ItemLine, Look, RunLine, Summary } from './summary-types.ts'
import { listWords, plural } from './words.ts'

export type Between = {
  /** Short hash of the commit where the branch began, and what it was asked for by. */
  readonly base: string
  readonly baseName: string
  readonly head: string
  /** Files of the records that are not committed. */
  readonly uncommitted: number
}

/** What a comment on a forge may hold, with some room. In bytes, which are never fewer than characters. */
const MOST = 65_000

const strong = (words: string): string => (words === 'pass' || words === '' ? words : `**${words}**`)

const DETAILS = 12

const detailRow = ({ at, before, after }: Detail): string =>
  `  - ${text(at)}: ${text(before)} → ${text(after)}`

const lookRow = ({ what, text: said, details }: Look): string => {
  const more = details.length - DETAILS
  return [
    `- **${text(what)}**: ${text(said)}`,
    ...details.slice(0, DETAILS).map(detailRow),
    ...(more > 0 ? [`  - and ${more} more`] : []),
  ].join('\n')
}

const criterionCells = ({ name, result, before, limit, probability, verdict }: CriterionLine): string[] => [
  text(name),
  before === null ? text(result) : `${text(result)} (was ${text(before)})`,
  text(limit),
  text(probability),
  strong(text(verdict)),
]

/** A row a criterion; the run stands in the first of them. */
const runRow = (run: RunLine): string => {
  const moved = run.before !== null && run.before !== run.verdict
  const verdict = moved
    ? `${text(run.before ?? '')} → ${strong(text(run.verdict))}`
    : strong(text(run.verdict))
  const reviewed = run.reviewed.length > 0 ? run.reviewed.join(', ') : 'nobody yet'
  const first = [code(run.id), run.is, text(run.by.join(', ')), text(reviewed), verdict]
  const [head, ...rest] = run.criteria.length > 0 ? run.criteria.map(criterionCells) : [['', '', '', '', '']]
  const rows = [
    tableRow([...first, ...(head ?? [])]),
    ...rest.map((cells) => tableRow(['', '', '', '', '', ...cells])),
  ]
  return rows.join('\n')
}

const REASONS = 3

const reasonRow = (run: RunLine): string[] =>
  run.reasons.length === 0 ? [] : [`- ${code(run.id)}: ${run.reasons.slice(0, REASONS).map(text).join('; ')}`]

const itemRow = ({ kind, title, closes }: ItemLine): string =>
  `- ${text(kind)}: ${text(title)}. *Closed by* ${text(closes)}`

const GATE_WORDS = 3

const sectionsOf = (summary: Summary): Section[] => [
  { title: 'Look at this first', head: [], rows: summary.looks.map(lookRow), of: 'points' },
  {
    title: 'Runs',
    head: tableHead([
      'run',
      '',
      'by',
      'reviewed by',
      'verdict',
      'criterion',
      'value ± U (95 %)',
      'limit',
      'P',
      'says',
    ]),
    rows: summary.runs.map(runRow),
    of: 'runs',
  },
  { title: 'Why', head: [], rows: summary.runs.flatMap(reasonRow), of: 'runs' },
  {
    title: 'Cards',
    head: tableHead(['card', 'on', 'before', 'after']),
    rows: summary.cards.map(({ card, article, before, after }) =>
      tableRow([text(card), text(article), text(before), strong(text(after))]),
    ),
    of: 'cards',
  },
  {
    title: 'Gates',
    head: tableHead(['gate', 'before', 'after', 'new against it']),
    rows: summary.gates.map(({ title, before, after, more }) => {
      const rest = more.length - GATE_WORDS
      const words = [...more.slice(0, GATE_WORDS).map(text), ...(rest > 0 ? [`and ${rest} more`] : [])]
      return tableRow([text(title), text(before), text(after), words.join('; ')])
    }),
    of: 'gates',
  },
  {
    title: `Opened: ${summary.opened.length}`,
    head: [],
    rows: summary.opened.map(itemRow),
    of: 'open items',
  },
  {
    title: `Closed: ${summary.closed.length}`,
    head: [],
    rows: summary.closed.map(({ kind, title }) => `- ${text(kind)}: ${text(title)}`),
    of: 'closed items',
  },
  {
    title: 'Other changes',
    head: [],
    rows: [
      ...summary.shared.map((line) => `- ${code(line.path)} ${detailRow(line).replace(/^ {2}- /, '')}`),
      ...summary.files.map(({ path, what }) => `- ${code(path)}: ${text(what)}`),
    ],
    of: 'changes',
  },
  {
    title: 'Problems in the files',
    head: tableHead(['where', '', 'code', 'what']),
    rows: summary.problems.map(problemRow),
    of: 'problems',
  },
]

const problemRow = ({ at, severity, code: name, message }: Problem): string =>
  tableRow([code(`${at.file}:${at.line}:${at.column}`), strong(severity), code(name), text(message)])

const counted = (runs: readonly RunLine[], is: RunLine['is']): string[] => {
  const own = runs.filter((run) => run.is === is)
  if (own.length === 0) return []
  const verdicts = ['pass', 'fail', 'undetermined'].flatMap((verdict) => {
    const count = own.filter((run) => run.verdict.startsWith(verdict)).length
    return count > 0 ? [`${count} ${verdict}`] : []
  })
  const words = own.length > 1 || is === 'changed' ? `${own.length} ${is} runs` : `1 ${is} run`
  return [`${own.length === 1 ? words.replace(/runs$/, 'run') : words} (${verdicts.join(', ') || 'void'})`]
}

const answer = (summary: Summary): string => {
  const errors = summary.problems.filter(({ severity }) => severity === 'error').length
  const parts = [
    ...counted(summary.runs, 'new'),
    ...counted(summary.runs, 'changed'),
    ...(summary.opened.length > 0 ? [`${plural(summary.opened.length, 'item')} opened`] : []),
    ...(summary.closed.length > 0 ? [`${plural(summary.closed.length, 'item')} closed`] : []),
    ...(errors > 0 ? [`**${plural(errors, 'error')} in the files**`] : []),
  ]
  const looks =
    summary.looks.length > 0 ? [`**${plural(summary.looks.length, 'point')} to look at first.**`] : []
  const said = parts.length > 0 ? `${listWords(parts)}.` : 'No verdict changes.'
  return [...looks, said].join(' ')
}

const uncommittedWords = ({ uncommitted }: Between): string =>
  uncommitted > 0 ? ` ${plural(uncommitted, 'file')} here not committed yet and counted in.` : ''

export const summaryMarkdown = (summary: Summary, between: Between, most = MOST): string => {
  const since = `since ${code(between.base)} (${text(between.baseName)})`
  const errors = summary.problems.filter(({ severity }) => severity === 'error').length
  if (summary.nothing) {
    const left = errors > 0 ? ` ${plural(errors, 'error')} in the files, there before as well.` : ''
    return `Nothing changed in the records ${since}.${left}\n`
  }
  const intro = [
    `## ${text(summary.title)}: what this branch changes`,
    '',
    answer(summary),
    '',
    `Records at ${code(between.head)} ${since}, judged as of ${summary.asOf}.${uncommittedWords(between)}` +
      (summary.oldWarnings > 0 ? ` ${plural(summary.oldWarnings, 'older warning')} not shown.` : ''),
  ]
  return boundedText(intro, sectionsOf(summary), most)
}
