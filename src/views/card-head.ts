/** The top of a card: status, what to do next, never beyond, cautions before anything else. */
import type { CardState } from '../campaign/types.ts'
import type { CardRecord } from '../format/types.ts'
import { cell, joined } from './page.ts'
import { recordLink } from './record.ts'
import { sheetPath } from './sheet.ts'
import { targetText } from './show.ts'
import type { Site } from './site.ts'
import type { Block, Rich } from './view.ts'
import { nameWords, plural, stamp, statusStamp, statusWord } from './words.ts'

/** What the technician may do next with this card on this article. */
const nextStep = (state: CardState, site: Site): Rich => {
  const round = state.rounds.find((each) => each.number === state.round)
  const done = round?.counts.pass ?? 0
  const waiting = state.card.after.filter((id) =>
    site.campaign.cards.some(
      (other) => other.id === id && other.status !== 'pass' && other.status !== 'conceded',
    ),
  )
  const on: Rich = [{ is: 'strong', text: state.article }, ': ']
  if (waiting.length > 0 && state.status !== 'pass')
    return [
      ...on,
      'wait. First must pass: ',
      ...joined(waiting.map((id) => site.link(id, site.campaign.records.cards[id]?.title))),
    ]
  if (state.status === 'pass') return [...on, 'nothing to do: it passes.']
  if (state.status === 'conceded') return [...on, 'nothing to do: its result is accepted by concession.']
  if (state.status === 'fail')
    return [...on, `it fails in round ${state.round}: rework first, then run it again.`]
  if (state.status === 'due-again')
    return [
      ...on,
      'run it again: ',
      ...site.linked(state.dueBecause?.what ?? 'something it covers was changed'),
      '.',
    ]
  const wanted =
    state.card.runsPerRound > 1 ? ` (${plural(state.card.runsPerRound, 'run')} a round, ${done} passed)` : ''
  const settle = round?.judgements.flatMap((judgement) => judgement.settle) ?? []
  if (state.status === 'undetermined')
    return [
      ...on,
      `undetermined${wanted}. `,
      ...(settle.length > 0 ? site.linked(`What would settle it: ${settle.join('; ')}`) : ['Run it again.']),
    ]
  return [...on, `run it for the first time${wanted}.`]
}

const targetWords = (state: CardState): Rich[] =>
  Object.entries(state.targets).map(([name, target]) => [
    `${name === 'target' ? 'Target' : `Target ${nameWords(name)}`} on ${state.article}: `,
    { is: 'strong', text: targetText(target) },
  ])

const stopWords = (card: CardRecord): Rich[] =>
  Object.entries(card.stopAt).map(([name, limit]) => [
    'Stop at ',
    { is: 'strong', text: `${nameWords(name)} ${limit.text}` },
    ': never beyond.',
  ])

const sheetLink = (state: CardState): Rich => [
  { is: 'link', text: `sheet for ${state.article}`, to: sheetPath(state) },
]

export const cardHead = (card: CardRecord, states: readonly CardState[], site: Site): Block[] => {
  const method = states[0]?.method
  const titles = new Map(Object.values(site.campaign.records.cards).map((each) => [each.id, each.title]))
  const several = states.length > 1
  const gates = [...new Set(states.flatMap((state) => state.gates))]
  const cautions = [...(method?.cautions ?? []), ...card.cautions]
  return [
    {
      is: 'title-block',
      label: 'Card',
      stamps: states.map((state) =>
        several
          ? stamp(`${state.article}: ${statusWord(state.status)}`, styleOf(state))
          : statusStamp(state.status),
      ),
      cells: [
        cell('Card', card.id),
        cell('Method', method ? [site.link(`method:${method.id}`, method.title)] : card.method),
        cell('Owner', site.person(card.owner)),
        cell(
          'Gates',
          gates.length > 0
            ? joined(
                gates.map((gate) =>
                  site.link(gate, site.campaign.gates.find((each) => each.id === gate)?.title),
                ),
              )
            : 'none',
        ),
        cell('Articles', joined(Object.keys(card.articles).map((article) => site.link(article))), 'half'),
        cell('Covers', card.covers.length > 0 ? card.covers.join(', ') : 'the whole article'),
        cell('Runs a round', String(card.runsPerRound)),
        ...(card.after.length > 0
          ? [
              cell(
                'Must have passed first',
                joined(card.after.map((id) => site.link(id, titles.get(id)))),
                'half',
              ),
            ]
          : []),
        ...(card.overtakenBy.length > 0
          ? [
              cell(
                'Overtaken by a later',
                joined(card.overtakenBy.map((id) => site.link(id, titles.get(id)))),
                'half',
              ),
            ]
          : []),
      ],
    },
    ...(cautions.length > 0 ? [{ is: 'cautions', items: cautions.map(site.linked) } as const] : []),
    {
      is: 'strip',
      title: 'Next',
      tone: 'quiet',
      items: [
        ...states.map((state) => nextStep(state, site)),
        ...states.flatMap(targetWords),
        ...stopWords(card),
        states.length > 0 ? recordLink(card.id) : [],
        states.length > 0 ? ['To print for the hangar: ', ...joined(states.map(sheetLink))] : [],
      ].filter((item) => item.length > 0),
    },
  ]
}

const styleOf = (state: CardState) => {
  const shown = statusStamp(state.status)
  return typeof shown === 'object' && shown.is === 'stamp' ? shown.style : 'plain'
}
