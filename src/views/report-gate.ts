/** The report of a gate: every card on it with serials, dates, verdicts, and what is open, to be printed and signed. */
import type { CardState, GateState, InstrumentUse, Run } from '../campaign/types.ts'
import type { ReadinessRecord } from '../format/types.ts'
import type { Term } from '../judge/types.ts'
import { gateAnswer } from './front.ts'
import { decidingRun } from './gates.ts'
import { notKnownStrip } from './history-known.ts'
import { cell, code, joined, lineBreak, list, prose, section, small, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import { concessions, meetingBlocks, meetingsOf, openItems } from './report-open.ts'
import { signatureBlocks, signs, standingBlocks } from './report-parts.ts'
import { instrumentTable } from './report-run.ts'
import { limitText, marginText, probabilityText, resultText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich, Target, View } from './view.ts'
import {
  dateWords,
  gateStamps,
  nameWords,
  REVIEW_WORDS,
  runStamps,
  STATE_WORDS,
  statusStamp,
  verdictStamp,
} from './words.ts'

export const gateReportPath = (id: string): Target => `gates/${id}/report/`

const cardCell = ({ id, card, article }: CardState, site: Site): Rich => {
  const serial = site.campaign.records.articles[article]?.serial
  const where: Rich = [site.link(article), ...(serial ? [` serial ${serial}`] : [])]
  return [site.link(id, card.title), lineBreak, small(...where)]
}

const reviewCell = ({ provenance }: Run, site: Site): Rich => {
  const { reviewed, state } = provenance
  if (reviewed.length === 0) return [state === 'unknown' ? 'not known' : 'not yet']
  return joined(
    reviewed.map((each): Rich => [site.person(each.by), ' ', small(REVIEW_WORDS[each.how])]),
    lineBreak,
  )
}

/** Tested, recorded and landed are three dates, and often three days. */
const datesCell = ({ record, provenance }: Run, site: Site): Rich => {
  const { recorded, landed, state } = provenance
  const day = (event: { readonly when: string } | null): string =>
    event ? dateWords(site.isoDay(event.when)) : STATE_WORDS[state]
  return [
    `tested ${dateWords(record.when.date)}`,
    lineBreak,
    `recorded ${day(recorded)}`,
    lineBreak,
    `landed ${day(landed)}`,
  ]
}

/** Every run of the newest round, void and broken-off ones too: none is left out because another looks better. */
const evidenceRows = (state: CardState, site: Site): Rich[][] => {
  const ids = state.rounds.at(-1)?.runs ?? []
  const runs = ids.flatMap((id) => site.campaign.runs.find((run) => run.id === id) ?? [])
  const head: Rich[] = [cardCell(state, site), [statusStamp(state.status), ` round ${state.round}`]]
  if (runs.length === 0) return [[...head, ['no run in this round'], [], [], []]]
  return runs.map((run) => {
    const { by, witness } = run.record
    const people = [...by.map(site.person), ...(witness ? [`${site.person(witness)}, witness`] : [])]
    const { recorded } = run.provenance
    const commit: Rich = recorded ? [lineBreak, small('commit ', code(recorded.commit.slice(0, 12)))] : []
    return [
      ...head,
      [site.link(run.id), ' ', ...joined(runStamps(run), ' '), ...commit],
      datesCell(run, site),
      joined(people, lineBreak),
      reviewCell(run, site),
    ]
  })
}

const termCells = (term: Term): Rich[] => [
  [resultText(term.value, term.unit)],
  [limitText(term)],
  [marginText(term)],
  [probabilityText(term)],
  [verdictStamp(term.verdict)],
]

const verdictRows = (state: CardState, site: Site): Rich[][] =>
  (state.rounds.at(-1)?.judgements ?? []).flatMap((judgement): Rich[][] => {
    const rule: Rich = [
      nameWords(judgement.criterion),
      lineBreak,
      code(judgement.accept),
      lineBreak,
      small(judgement.rule.text),
    ]
    const card = cardCell(state, site)
    if (judgement.terms.length === 0)
      return [[card, rule, ['no result'], [], [], [], [verdictStamp(judgement.verdict)]]]
    return judgement.terms.map((term) => [card, rule, ...termCells(term)])
  })

/** Each instrument under each calibration once, with the columns that it read. */
const instrumentsOf = (states: readonly CardState[], site: Site): InstrumentUse[] => {
  const found = new Map<string, InstrumentUse>()
  for (const use of states.flatMap((state) => decidingRun(state, site)?.instruments ?? [])) {
    const key = `${use.instrument.id}@${use.calibration}`
    const before = found.get(key)
    const columns = new Set([...(before?.column.split(', ') ?? []), use.column])
    found.set(key, {
      ...use,
      column: [...columns].join(', '),
      inForce: use.inForce && before?.inForce !== false,
    })
  }
  return [...found.values()].sort((a, b) => (a.instrument.id < b.instrument.id ? -1 : 1))
}

const titleBlock = (gate: GateState, site: Site): Block => ({
  is: 'title-block',
  label: 'Report',
  stamps: gateStamps(gate),
  cells: [
    cell('Gate', [gate.title, ' ', code(gate.id)], 'half'),
    cell(
      'Needs',
      gate.needs.length > 0
        ? joined(
            gate.needs.map((id) =>
              site.link(id, site.campaign.gates.find((other) => other.id === id)?.title),
            ),
          )
        : 'no other gate',
      'half',
    ),
    cell('As of', dateWords(site.campaign.asOf)),
    cell('Computed by', `version ${site.campaign.tool}`),
    cell('Cards', String(gate.cards.length)),
    cell('In order', String(gate.order)),
  ],
})

/** Present at the newest meeting, and whoever releases and inspects. */
const signatures = (meetings: readonly ReadinessRecord[], site: Site): Block[] =>
  signatureBlocks([
    ...(meetings.at(-1)?.present ?? []).map((id) => signs('present', id, site)),
    signs('released by', undefined, site),
    signs('inspected by', undefined, site),
  ])

const orNone = (blocks: Block[], words: string): Block[] => (blocks.length > 0 ? blocks : [text(words)])

export const gateReportView = (gate: GateState, site: Site): View => {
  const record = site.campaign.records.gates[gate.id]
  const written = record ? proseOf(record.body, record.source.path, site) : { html: '', files: [] }
  const states = site.campaign.cards.filter((state) =>
    gate.cards.some((each) => each.card === state.id && each.article === state.article),
  )
  const meetings = meetingsOf(gate, site)
  const blocks: Block[] = [
    titleBlock(gate, site),
    { is: 'answer', text: site.linked(gateAnswer(gate)) },
    ...notKnownStrip(site),
    ...section('purpose', 'What the gate is for', prose(written)),
    ...section('held-by', 'What stands between', list(gate.words.map(site.linked))),
    ...section(
      'cards',
      'Cards and their runs',
      table(
        'Cards, serials, runs, dates and people',
        ['card, article', 'status', 'run of the newest round', 'dates', 'by, witness', 'reviewed'],
        states.flatMap((state) => evidenceRows(state, site)),
      ),
    ),
    ...section(
      'verdicts',
      'Verdicts of the newest round',
      table(
        'Criteria, results and verdicts',
        ['card, article', 'criterion', '#result', '#limit', '#margin', '#conforms with', 'verdict'],
        states.flatMap((state) => verdictRows(state, site)),
      ),
    ),
    ...section('instruments', 'Instruments behind them', instrumentTable(instrumentsOf(states, site), site)),
    ...section('items', 'Open items', orNone(openItems(gate, site), 'None holds this gate.')),
    ...section('concessions', 'Concessions', orNone(concessions(gate, states, site), 'None.')),
    ...section(
      'meetings',
      'Readiness records',
      orNone(
        meetings.flatMap((meeting) => meetingBlocks(meeting, site)),
        'No meeting was held on this gate.',
      ),
    ),
    ...signatures(meetings, site),
    ...standingBlocks(`gates/${gate.id}/`, site),
  ]
  return viewOf(site, {
    path: gateReportPath(gate.id),
    kind: 'report',
    title: `Report: ${gate.title}`,
    description: `Report of gate ${gate.id}, as of ${dateWords(site.campaign.asOf)}`,
    blocks,
    files: written.files,
  })
}
