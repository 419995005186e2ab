/** The gates: may we, what stands between, and the evidence for whoever asks. */
import type { CardState, GateState, Run } from '../campaign/types.ts'
import { gateAnswer, gateRow } from './front.ts'
import { notKnownStrip } from './history-known.ts'
import { itemsTable } from './items.ts'
import { cell, joined, lineBreak, list, prose, section, small, table, text, viewOf } from './page.ts'
import { proseOf } from './prose.ts'
import type { Site } from './site.ts'
import type { Block, Rich, View } from './view.ts'
import {
  dateWords,
  gateStamps,
  historyMarks,
  REVIEW_WORDS,
  STATE_WORDS,
  stamp,
  statusStamp,
} from './words.ts'

export const gatesView = (site: Site): View => {
  const { gates } = site.campaign
  const rows = gates.map((gate) => gateRow(gate, site))
  const blocks: Block[] = rows.length > 0 ? [{ is: 'gates', rows }] : [text('No gate is defined yet.')]
  return viewOf(site, {
    path: 'gates/',
    kind: 'gates',
    title: 'What must be settled, step by step?',
    description: 'All gates in their order.',
    blocks,
  })
}

/** The run that the state of a card rests on: the newest of its newest round. */
export const decidingRun = (state: CardState, site: Site) => {
  const id = state.rounds.at(-1)?.runs.at(-1)
  return id === undefined ? undefined : site.run(id)
}

const runMarks = (run: Run): Rich => [
  ...(run.record.void ? [stamp('void', 'plain')] : []),
  ...historyMarks(run).map(({ word, style }) => stamp(word, style)),
]

/** For an inspector: serial, when tested, recorded and landed, by whom, reviewed by whom. */
const evidenceRow = (state: CardState, site: Site): Rich[] => {
  const run = decidingRun(state, site)
  const serial = site.campaign.records.articles[state.article]?.serial ?? ''
  const card: Rich = [site.link(state.id, state.card.title)]
  const article: Rich = [site.link(state.article), ...(serial ? [` ${serial}`] : [])]
  if (!run) return [card, article, [statusStamp(state.status)], [], [], [], [], []]
  const { recorded, landed, reviewed, state: known } = run.provenance
  return [
    card,
    article,
    [statusStamp(state.status)],
    [site.link(run.id, dateWords(run.record.when.date)), ' ', ...joined(runMarks(run), ' ')],
    joined([...run.record.by, ...(run.record.witness ? [run.record.witness] : [])].map(site.person)),
    [recorded ? site.at(recorded.when) : STATE_WORDS[known]],
    [landed ? site.at(landed.when) : STATE_WORDS[known]],
    reviewed.length > 0
      ? joined(
          reviewed.map((each): Rich => [site.person(each.by), ' ', small(REVIEW_WORDS[each.how])]),
          lineBreak,
        )
      : [known === 'unknown' ? 'not known' : 'not yet'],
  ]
}

const meetings = (gate: GateState, site: Site): Block[] =>
  table(
    'Readiness meetings',
    ['meeting', 'decision', 'present', 'basis'],
    Object.values(site.campaign.records.readiness)
      .filter((record) => record.gate === gate.id)
      .sort((a, b) => b.when.epoch - a.when.epoch)
      .map((record) => [
        [site.link(record.id, dateWords(record.when.date))],
        [record.decision],
        joined(record.present.map(site.person)),
        [`${record.basis.length} results`],
      ]),
  )

export const gateView = (gate: GateState, site: Site): View => {
  const record = site.campaign.records.gates[gate.id]
  const written = record ? proseOf(record.body, record.source.path, site) : { html: '', files: [] }
  const states = site.campaign.cards.filter((state) =>
    gate.cards.some((each) => each.card === state.id && each.article === state.article),
  )
  const items = site.campaign.items.filter((item) => item.gates.includes(gate.id))
  const needed = gate.needs.map((need) =>
    site.link(need, site.campaign.gates.find((other) => other.id === need)?.title),
  )
  const rows = states.map((state) => evidenceRow(state, site))
  const blocks: Block[] = [
    {
      is: 'title-block',
      label: 'Gate',
      stamps: gateStamps(gate),
      cells: [
        cell('In order', String(gate.order)),
        cell('Needs', needed.length > 0 ? joined(needed) : 'no other gate'),
        cell('As of', dateWords(site.campaign.asOf)),
        cell('Computed by', `version ${site.campaign.tool}`),
      ],
    },
    { is: 'answer', text: site.linked(gateAnswer(gate)) },
    ...notKnownStrip(site),
    ...section('held-by', 'What stands between', list(gate.words.map(site.linked))),
    ...section(
      'cards',
      'Cards of this gate',
      table(
        'Cards, serials, dates and signatures',
        ['card', 'article, serial', 'status', 'tested', 'by, witness', 'recorded', 'landed', 'reviewed'],
        rows,
      ),
    ),
    ...section('items', 'Open items that hold it', itemsTable(items, site)),
    ...section('meetings', 'Readiness meetings', meetings(gate, site)),
    ...section('purpose', 'What the gate is for', prose(written)),
    text(
      'To print and sign: ',
      {
        is: 'link',
        text: 'report of this gate',
        to: `gates/${gate.id}/report/`,
      },
      '.',
    ),
  ]
  return viewOf(site, {
    path: `gates/${gate.id}/`,
    kind: 'gate',
    title: `${gate.title}: may we?`,
    description: gateAnswer(gate),
    blocks,
    files: written.files,
  })
}
