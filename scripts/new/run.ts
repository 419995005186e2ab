/** A new run: which card, on which article, with which state of the card in hand. */
import type { Campaign, CardState } from '../../src/campaign/types.ts'
import { runFolder, runId } from '../../src/form/name.ts'
import { inHand } from '../../src/history/in-hand.ts'
import { newRunText } from '../../src/views/new-run.ts'
import { unknownName } from '../../src/views/part-names.ts'
import type { Draft, NewContext } from './context.ts'

const choose = (campaign: Campaign, card: string, article: string | undefined): CardState | string => {
  const states = campaign.cards.filter((state) => state.id === card)
  const [only, second] = states
  if (!only) {
    const broken = campaign.records.seen.find((each) => each.kind === 'card' && each.id === card)
    if (broken) return `The card ${card} has errors; see npm run check, and mend ${broken.path} first.`
    return unknownName('card', card, [...new Set(campaign.cards.map((state) => state.id))])
  }
  if (article === undefined && !second) return only
  const named = states.find((state) => state.article === article)
  const articles = states.map((state) => state.article).join(', ')
  if (named) return named
  return article === undefined
    ? `${card} serves several articles; add --article with one of ${articles}.`
    : `${card} does not serve ${article}; it serves ${articles}.`
}

export const newRun = (
  { campaign, input, when, by, id }: NewContext,
  card: string,
  article: string | undefined,
): Draft | string => {
  const state = choose(campaign, card, article)
  if (typeof state === 'string') return state
  const several = Object.keys(state.card.articles).length > 1
  const name = { when, card, article: several ? state.article : '' }
  const hand = input.history ? inHand(input.history, state.card.source.path) : null
  const notes = hand && hand.revision === null ? [`No card-revision is written: ${hand.why}.`] : []
  return {
    folder: runFolder(name),
    id: id ?? runId(name),
    text: newRunText({ campaign, state, when, by, revision: hand?.revision ?? null }),
    notes,
  }
}
