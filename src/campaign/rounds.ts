/** Rounds of one card on one article: the runs between two changes that matter to it. */
import type { CardRecord, ReworkRecord } from '../format/types.ts'
import { coveredParts, touches } from './parts.ts'
import type { Run } from './types.ts'

export type Change = {
  readonly id: string
  readonly what: string
  readonly when: string
  readonly epoch: number
}

export type Span = {
  readonly number: number
  readonly begunBy: Change | null
  /** The first change after its runs: what made them worthless. */
  readonly endedBy: Change | null
  readonly runs: readonly Run[]
}

/** A rework of a covered part ends the round, unless it states why this card is unaffected. */
const reworkChanges = (card: CardRecord, article: string, reworks: readonly ReworkRecord[]): Change[] => {
  const covered = coveredParts(card.covers, article)
  return reworks
    .filter((rework) => rework.changes.some((part) => covered.some((own) => touches(part, own))))
    .filter((rework) => !rework.unaffected.some((entry) => entry.card === card.id))
    .map((rework) => ({
      id: rework.id,
      what: rework.title,
      when: rework.when.text,
      epoch: rework.when.epoch,
    }))
}

/** So does a run of a card that is named in `overtaken-by`, on the same article or a part of it. */
const proofChanges = (card: CardRecord, article: string, runs: readonly Run[]): Change[] =>
  runs
    .filter(
      (run) => card.overtakenBy.includes(run.card.id) && touches(run.article, article) && !run.record.void,
    )
    .map((run) => ({
      id: run.id,
      what: run.card.title,
      when: run.record.when.text,
      epoch: run.record.when.epoch,
    }))

export const changesFor = (
  card: CardRecord,
  article: string,
  reworks: readonly ReworkRecord[],
  runs: readonly Run[],
): Change[] =>
  [...reworkChanges(card, article, reworks), ...proofChanges(card, article, runs)].sort(
    (a, b) => a.epoch - b.epoch || (a.id < b.id ? -1 : 1),
  )

/**
 * Splits the runs of a card and article by the changes, each by its own date whatever day it landed.
 * Changes before the first run begin nothing; several in a row begin one round, named after the last.
 */
export const splitRounds = (runs: readonly Run[], changes: readonly Change[]): Span[] => {
  type Open = { number: number; begunBy: Change | null; endedBy: Change | null; runs: Run[] }
  const spans: Open[] = [{ number: 1, begunBy: null, endedBy: null, runs: [] }]
  const events = [
    ...changes.map((change) => ({ epoch: change.epoch, change })),
    ...runs.map((run) => ({ epoch: run.record.when.epoch, run })),
  ].sort((a, b) => a.epoch - b.epoch || ('change' in a ? -1 : 1))
  for (const event of events) {
    const current = spans.at(-1)
    if (!current) continue
    if ('run' in event) current.runs.push(event.run)
    else if (current.runs.length > 0) {
      current.endedBy = event.change
      spans.push({ number: current.number + 1, begunBy: event.change, endedBy: null, runs: [] })
    } else if (current.number > 1) current.begunBy = event.change
  }
  return spans
}
