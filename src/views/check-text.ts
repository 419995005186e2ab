/** The report of `check` on a terminal: verdicts first, then gates, then problems with their excerpts. */
import type { Campaign, CardState, GateState, Run } from '../campaign/types.ts'
import { printTerminal } from '../problems/printers/terminal.ts'
import { countProblems, sortProblems } from '../problems/sort.ts'
import { formatQuantity } from '../quantity/display.ts'
import { type Paint, painter } from './paint.ts'

const WORD = {
  pass: 'pass',
  fail: 'FAIL',
  undetermined: 'undetermined',
  'not-run': 'not run',
  'due-again': 'due again',
  conceded: 'conceded',
} as const

const pad = (text: string, width: number): string => text + ' '.repeat(Math.max(0, width - [...text].length))

const widest = (texts: readonly string[]): number =>
  texts.reduce((width, text) => Math.max(width, [...text].length), 0)

/** Value ± U against its limit, of the first term of each criterion. */
const resultOf = (run: Run): string =>
  run.judgements
    .map((judgement) => {
      const [term] = judgement.terms
      return term
        ? `${judgement.criterion} ${formatQuantity(term.value, term.unit).text}`
        : `${judgement.criterion} –`
    })
    .join(' · ')

const newestRun = (campaign: Campaign, state: CardState): Run | undefined => {
  const ids = state.rounds.findLast((round) => round.runs.length > 0)?.runs ?? []
  return campaign.runs.findLast((run) => ids.includes(run.id))
}

const cardLines = (campaign: Campaign, paint: Paint): string[] => {
  const names = campaign.cards.map((state) =>
    Object.keys(state.card.articles).length > 1 ? `${state.id} on ${state.article}` : state.id,
  )
  const width = widest(names)
  return campaign.cards.flatMap((state, index) => {
    const run = newestRun(campaign, state)
    const word = pad(WORD[state.status], 13)
    const line =
      `  ${paint(state.status, word)} ${pad(names[index] ?? '', width)}  round ${state.round}  ${run ? resultOf(run) : ''}`.trimEnd()
    const why =
      state.status === 'undetermined' || state.status === 'fail'
        ? run?.reasons.map((reason) => `${' '.repeat(16)}${reason}`)
        : []
    return [line, ...(why ?? [])]
  })
}

const gateWord = (gate: GateState): string => (gate.overtaken ? 'released, overtaken' : gate.state)

const gateLines = (campaign: Campaign, paint: Paint): string[] =>
  campaign.gates.flatMap((gate) => [
    `  ${paint(gate.state === 'held' || gate.overtaken ? 'due-again' : 'pass', pad(gateWord(gate), 20))} ${gate.title}`,
    ...gate.words.slice(0, 4).map((words) => `${' '.repeat(24)}${words}`),
    ...(gate.words.length > 4 ? [`${' '.repeat(24)}and ${gate.words.length - 4} more`] : []),
  ])

const plural = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`

const summary = (campaign: Campaign): string => {
  const verdicts = ['pass', 'fail', 'undetermined'].map(
    (verdict) => `${campaign.runs.filter((run) => run.verdict === verdict).length} ${verdict}`,
  )
  const voids = campaign.runs.filter((run) => run.verdict === null).length
  const read = Object.keys(campaign.records.runs).length
  const left =
    read > campaign.runs.length
      ? `; ${plural(read - campaign.runs.length, 'run')} not judged, since the card has errors`
      : ''
  return `${plural(campaign.runs.length, 'run')}: ${verdicts.join(', ')}${voids > 0 ? `, ${voids} void` : ''}; ${plural(campaign.items.length, 'open item')}${left}`
}

export type TextOptions = { readonly colour: boolean; readonly textOf: (file: string) => string | undefined }

export const checkText = (campaign: Campaign, { colour, textOf }: TextOptions): string => {
  const paint = painter(colour)
  const problems = sortProblems(campaign.problems)
  const sections = [
    [`${campaign.records.settings.title}, as of ${campaign.asOf}`],
    campaign.cards.length > 0 ? ['Cards', ...cardLines(campaign, paint)] : ['No card has been written yet.'],
    campaign.gates.length > 0 ? ['Gates', ...gateLines(campaign, paint)] : [],
    problems.length > 0
      ? [
          `Problems in the files`,
          '',
          problems.map((problem) => printTerminal(problem, textOf, { colour })).join('\n\n'),
        ]
      : [],
    [`${summary(campaign)}.`, countProblems(problems, campaign.records.seen.length)],
  ]
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`
}
