/** The rounds of a card and article: as one row of the log sheet, and as a table with all its runs. */
import type { CardState, Round, Run } from '../campaign/types.ts'
import { joined, lineBreak, small, table } from './page.ts'
import { resultText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Inline, Rich } from './view.ts'
import {
  dateWords,
  historyMarks,
  nameWords,
  plural,
  runStamps,
  stamp,
  statusStamp,
  timeWords,
} from './words.ts'

const roundStamp = (state: CardState, round: Round): Inline =>
  round.number === state.round && state.status === 'due-again'
    ? statusStamp('due-again')
    : statusStamp(round.status)

/** What git says of its runs: each word once. */
const roundMarks = (round: Round, site: Site): Rich => {
  const marks = round.runs.flatMap((id) => {
    const run = site.run(id)
    return run ? historyMarks(run) : []
  })
  const words = new Map(marks.map((mark) => [mark.word, mark]))
  return [...words.values()].flatMap(({ word, style }): Rich => [' ', stamp(word, style)])
}

/** One cell of the log sheet: the word, and under it when. */
const roundCell = (state: CardState, round: Round | undefined, site: Site): Rich => {
  if (!round) return []
  const [first, ...others] = round.runs
  const date = first ? site.run(first)?.record.when.date : undefined
  const when: Rich =
    first && date
      ? [
          lineBreak,
          small(
            site.link(first, dateWords(date)),
            ...(others.length > 0 ? [` and ${plural(others.length, 'more run')}`] : []),
          ),
        ]
      : []
  return [roundStamp(state, round), ...roundMarks(round, site), ...when]
}

const MOST_ROUNDS = 6

/** A row a card and article, a column a round; of very many rounds the newest. */
export const roundsSheet = (states: readonly CardState[], site: Site): Block[] => {
  const most = Math.max(0, ...states.map((state) => state.rounds.length))
  const from = Math.max(0, most - MOST_ROUNDS)
  const numbers = Array.from({ length: most - from }, (_, index) => from + index + 1)
  const gateNames = new Map(site.campaign.gates.map((gate) => [gate.id, gate.title]))
  const rows = states.map((state): Rich[] => [
    [site.link(state.id, state.card.title), lineBreak, small(state.article)],
    joined(state.gates.map((gate) => site.link(gate, gateNames.get(gate)))),
    ...numbers.map((number) => roundCell(state, state.rounds[number - 1], site)),
  ])
  return table(
    'Cards by round',
    ['card, article', 'gate', ...numbers.map((number) => `round ${number}`)],
    rows,
  )
}

/** What a run came to, in one line: each judged value against its limits. */
export const runResults = (run: Run): Rich =>
  joined(
    run.judgements.flatMap((judgement) =>
      judgement.terms.map((term) => `${nameWords(judgement.criterion)} ${resultText(term.value, term.unit)}`),
    ),
    lineBreak,
  )

const beginning = (round: Round, site: Site): Rich =>
  round.begunBy
    ? [
        ...site.linked(round.begunBy.what),
        ' (',
        site.link(round.begunBy.id),
        `), ${timeWords(round.begunBy.when)}`,
      ]
    : ['first round']

const pooled = (round: Round): Rich =>
  joined(
    round.judgements.flatMap((judgement) =>
      judgement.terms.map((term) => `${nameWords(judgement.criterion)} ${resultText(term.value, term.unit)}`),
    ),
    lineBreak,
  )

export const roundsTable = (state: CardState, site: Site): Block[] => {
  const rows = [...state.rounds].reverse().flatMap((round): Rich[][] => {
    const head: Rich[] = [
      [{ is: 'strong', text: String(round.number) }],
      beginning(round, site),
      pooled(round),
      [roundStamp(state, round)],
    ]
    const runs = round.runs.flatMap((id): Rich[][] => {
      const run = site.run(id)
      return run
        ? [
            [
              [],
              [site.link(id, `run of ${dateWords(run.record.when.date)}, ${run.record.when.clock}`)],
              runResults(run),
              joined(runStamps(run), ' '),
            ],
          ]
        : []
    })
    return [head, ...runs]
  })
  return table(
    `Rounds of ${state.card.title} on ${state.article}`,
    ['round', 'begun by, and runs', 'results', 'verdict'],
    rows,
  )
}
