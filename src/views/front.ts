/** The front page: may we take the next step? Gates in order, cards by round, the last days. */
import type { GateState } from '../campaign/types.ts'
import { notKnownStrip } from './history-known.ts'
import { lastDays } from './log.ts'
import { section, viewOf } from './page.ts'
import { roundsSheet } from './rounds.ts'
import type { Site } from './site.ts'
import type { Block, GateRow, Rich, View } from './view.ts'
import { dateWords, gateStamps, listWords, plural } from './words.ts'

const isOpen = (gate: GateState): boolean => gate.state === 'held' || gate.overtaken

const MOST_WORDS = 5

const gateWords = (gate: GateState, site: Site): Rich[] => {
  const passed = gate.cards.filter((card) => card.status === 'pass' || card.status === 'conceded').length
  const counted =
    gate.cards.length > 0 ? [[`${passed} of ${plural(gate.cards.length, 'card')} settled.`]] : []
  const { released } = gate
  const meeting = released
    ? [
        [
          site.link(released.id, `Readiness meeting of ${dateWords(released.when.date)}`),
          `: ${released.decision}.`,
        ],
      ]
    : []
  const more = gate.words.length - MOST_WORDS
  const rest: Rich[] =
    more > 0
      ? [[{ is: 'link', text: `and ${plural(more, 'more thing')}`, to: `gates/${gate.id}/#held-by` }]]
      : []
  return [...counted, ...meeting, ...gate.words.slice(0, MOST_WORDS).map(site.linked), ...rest]
}

export const gateRow = (gate: GateState, site: Site): GateRow => ({
  order: gate.order,
  title: gate.title,
  to: `gates/${gate.id}/`,
  stamps: gateStamps(gate),
  words: gateWords(gate, site),
})

const MOST_REASONS = 3

/** The answer to the question of a gate, in a sentence. */
export const gateAnswer = (gate: GateState): string => {
  const name = gate.title
  if (gate.overtaken)
    return `${name} was released, and is overtaken: ${gate.words.slice(0, MOST_REASONS).join('; ')}.`
  if (gate.state === 'released') return `${name}: yes, released.`
  if (gate.state === 'clear') return `${name}: clear, and waits for a readiness meeting.`
  const shown = gate.words.slice(0, MOST_REASONS)
  const more = gate.words.length - shown.length
  const count = gate.words.length === 1 ? 'one thing' : plural(gate.words.length, 'thing')
  return `${name} waits for ${count}: ${shown.join('; ')}${more > 0 ? `; and ${plural(more, 'more thing')}` : ''}.`
}

const answer = (gates: readonly GateState[]): string => {
  if (gates.length === 0)
    return 'No gate is defined yet: nothing says what must be settled before the next step.'
  const settled = gates.filter((gate) => !isOpen(gate))
  const next = gates.find(isOpen)
  const done =
    settled.length === 0
      ? ''
      : `${listWords(settled.map((gate) => gate.title))}: ${settled.length === 1 ? 'yes' : 'yes, each'}. `
  return next ? done + gateAnswer(next) : `${done}No gate is held.`
}

const problemStrip = (site: Site): Block[] => {
  const errors = site.campaign.problems.filter((problem) => problem.severity === 'error')
  if (errors.length === 0) return []
  const files = [...new Set(errors.map((problem) => problem.at.file))]
  const said = `${plural(errors.length, 'error')} in ${listWords(files.slice(0, 3))}${files.length > 3 ? ` and ${files.length - 3} more files` : ''}: what they record is not on these pages.`
  return [
    {
      is: 'strip',
      title: 'Files with errors',
      tone: 'loud',
      items: [[said, ' ', { is: 'link', text: 'What is wrong', to: 'handbook/problems/#found' }]],
    },
  ]
}

export const frontView = (site: Site): View => {
  const { campaign } = site
  const blocks: Block[] = [
    { is: 'answer', text: site.linked(answer(campaign.gates)) },
    { is: 'text', text: [{ is: 'link', text: 'Record a run', to: 'record/' }, ', with or without network.'] },
    ...problemStrip(site),
    ...notKnownStrip(site),
    ...(campaign.gates.length > 0
      ? [{ is: 'gates', rows: campaign.gates.map((gate) => gateRow(gate, site)) } as const]
      : []),
    ...section('cards', 'Cards by round', roundsSheet(campaign.cards, site)),
    ...section('log', 'The last days', lastDays(site)),
    {
      is: 'text',
      text: [
        {
          is: 'small',
          text: [
            `${campaign.records.settings.purpose.trim()} As of ${dateWords(campaign.asOf)}; computed by version ${campaign.tool}.`,
          ],
        },
      ],
    },
  ]
  return viewOf(site, {
    path: '',
    kind: 'front',
    title: 'May we take the next step?',
    description: answer(campaign.gates),
    blocks,
  })
}
