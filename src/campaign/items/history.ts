/** Items that follow from history: not reviewed, changed after landing, gone, voided, limits that moved, gates thinned. */
import { classify } from '../../format/classify.ts'
import type { Change, NotCounted, Review, Shift } from '../history/types.ts'
import type { HistoryFacts } from '../history/with-history.ts'
import type { OpenItem, Run } from '../types.ts'
import { gatesOfCard, type ItemContext, itemId, runItem, stillCounts } from './item.ts'

const BY_REVIEW = 'a review of exactly this content by a person with the role review who did not do the test'

/** Reviews that were there at the moment that is looked at. */
const reviewedBy = ({ until }: ItemContext, run: Run): readonly Review[] =>
  until === undefined
    ? run.provenance.reviewed
    : run.provenance.reviewed.filter(({ when }) => Date.parse(when) <= until)

const dayOf = (run: Run): string =>
  run.provenance.landed?.when.slice(0, 10) ??
  run.provenance.recorded?.when.slice(0, 10) ??
  run.record.when.date

const againstWords = (others: readonly NotCounted[]): string => {
  const [first] = others
  return first ? `; the review by ${first.by} does not count: ${first.reason}` : ''
}

const reviewWords = (run: Run): string => {
  const { state, notCounted } = run.provenance
  if (state === 'uncommitted') return `${run.id} is not committed yet, so nobody can have reviewed it`
  const how = state === 'proposed' ? 'is proposed and not reviewed' : 'has landed without a review'
  return `${run.id} ${how}${againstWords(notCounted)}`
}

const notReviewed = (context: ItemContext, facts: HistoryFacts, run: Run): OpenItem[] => {
  const amended = (run.provenance.changes ?? []).length > 0
  if (run.gone || reviewedBy(context, run).length > 0 || (!facts.reviewAsked && !amended)) return []
  const title = amended
    ? `${run.id} was changed after it had landed, and the change is not reviewed: ${changesWords(run.provenance.changes ?? [])}`
    : reviewWords(run)
  return [
    runItem(context, run, {
      kind: amended ? 'amendment-unreviewed' : 'not-reviewed',
      about: [run.id],
      title,
      closes: BY_REVIEW,
      toReview: [run.id],
      since: amended ? (run.provenance.changedOn ?? context.asOf) : dayOf(run),
    }),
  ]
}

const MOST = 3

const changesWords = (changes: readonly Change[]): string => {
  const said = changes
    .slice(0, MOST)
    .map(({ at, before, after }) => `${at} was ${before}, is now ${after}`)
    .join('; ')
  return changes.length > MOST ? `${said}; and ${changes.length - MOST} more` : said
}

const changed = (context: ItemContext, run: Run): OpenItem[] => {
  const silent = (run.provenance.changes ?? []).filter((change) => !change.amended)
  if (silent.length === 0 || run.gone) return []
  const [first] = silent
  return [
    runItem(context, run, {
      kind: 'changed',
      about: [run.id],
      title: `${run.id} was changed after it had landed, without an amendment: ${changesWords(silent)}`,
      closes: `an amendment that names each change (at: ${first?.at}) and what it was, or the old value put back`,
      since: run.provenance.changedOn ?? context.asOf,
    }),
  ]
}

const PUT_BACK = 'putting the file back; a run that must not count is voided with a reason'

/** Where its card went as well, nobody can say which gates it held: it holds all. */
const gatesOfLost = ({ records }: ItemContext, card: string): readonly string[] =>
  records.cards[card] ? gatesOfCard(records, card) : Object.keys(records.gates)

const gone = (context: ItemContext, run: Run): OpenItem[] => {
  if (!run.gone) return []
  const { by, commit } = run.gone
  const who = commit === null ? 'taken away, and that is not committed yet' : `taken away by ${by}`
  const open = runItem(context, run, {
    kind: 'run-gone',
    about: [run.id, run.card.id],
    title: `The file of ${run.id} (${run.wouldBe}) was ${who}`,
    closes: PUT_BACK,
    since: run.gone.when?.slice(0, 10) ?? context.asOf,
  })
  return [{ ...open, gates: gatesOfLost(context, run.card.id) }]
}

const voided = (context: ItemContext, facts: HistoryFacts, run: Run): OpenItem[] => {
  const { voidedSince } = run.provenance
  if (!run.record.void || reviewedBy(context, run).length > 0) return []
  if (!voidedSince && !facts.reviewAsked) return []
  const when = voidedSince ? 'was voided after it had landed' : 'is void'
  return [
    runItem(context, run, {
      kind: 'voided',
      about: [run.id],
      title: `${run.id} ${when} (${run.record.void.why}); it would be ${run.wouldBe}, and the voiding is not reviewed`,
      closes: BY_REVIEW,
      toReview: [run.id],
      since: run.record.void.when.date,
    }),
  ]
}

const named = (shifts: readonly Shift[]): string =>
  shifts.map(({ criterion }) => criterion.replaceAll('_', ' ')).join(', ')

const idOfFile = (path: string): string => {
  const file = classify(path)
  return 'id' in file ? file.id : path
}

const limitMoved = (context: ItemContext, run: Run): OpenItem[] => {
  const { asRun } = run
  if (!asRun?.counts) return []
  const laxer = asRun.shifts.filter(({ is }) => is === 'laxer')
  const unlike = asRun.shifts.filter(({ is }) => is === 'not comparable')
  if (laxer.length === 0 && unlike.length === 0 && asRun.unreadable === null) return []
  const what =
    asRun.unreadable !== null
      ? `${asRun.differs.join(', ')} changed since ${run.id}, which cannot be judged by the state of then: ${asRun.unreadable}`
      : laxer.length > 0
        ? `${run.id} is judged more mildly than when it was made: ${named(laxer)}`
        : `${run.id} is judged by another formula than when it was made: ${named(unlike)}`
  const verdicts =
    asRun.unreadable === null ? ` (as run ${asRun.verdict}, by today's files ${run.presentVerdict})` : ''
  return [
    runItem(context, run, {
      kind: 'limit-moved',
      about: [run.id, run.card.id],
      title: `${what}${verdicts}`,
      closes: `a review of ${asRun.differs.join(', ')} as now, by a person with the role review who did not do the test`,
      toReview: asRun.differs.map(idOfFile),
      since: dayOf(run),
    }),
  ]
}

const limitWithReading = (context: ItemContext, run: Run): OpenItem[] => {
  const { asRun } = run
  if (!asRun || asRun.cardReviewed || !(asRun.togetherWithRun || asRun.writtenAfter)) return []
  const how = asRun.togetherWithRun ? 'together with' : 'after'
  return [
    runItem(context, run, {
      kind: 'limit-with-reading',
      about: [run.id, run.card.id],
      title: `The limit of ${run.card.title} was written ${how} the reading ${run.id}`,
      closes: `a review of ${run.card.id} as it is now, by a person with the role review who did not do the test`,
      toReview: [run.card.id],
      since: dayOf(run),
    }),
  ]
}

const lost = (context: ItemContext, facts: HistoryFacts): OpenItem[] =>
  facts.lost.map(({ id, card, gone: { commit, when, by }, why }) => {
    const record = context.records.cards[card]
    const who = commit === null ? 'is not there any more' : `was taken away by ${by}`
    return {
      id: itemId('run-gone', id),
      kind: 'run-gone' as const,
      title: `The file of ${id} as it had landed ${who}, and cannot be shown: ${why}`,
      about: [id, ...(record ? [card] : [])],
      gates: gatesOfLost(context, card),
      owner: record?.owner ?? '',
      since: when?.slice(0, 10) ?? context.asOf,
      closes: PUT_BACK,
      due: null,
      raisedByHand: false,
    }
  })

const isThing = ({ records }: ItemContext, id: string): boolean => records.seen.some((file) => file.id === id)

const thinned = (context: ItemContext, facts: HistoryFacts): OpenItem[] =>
  facts.thinned.map(({ gate, what, title, by, since }) => ({
    id: itemId('off-gate', gate, ...(by === null ? [] : [by]), what),
    kind: 'off-gate' as const,
    title,
    about: [...new Set([gate, ...(by === null ? [] : [by]), ...(isThing(context, what) ? [what] : [])])],
    gates: [gate],
    owner: context.records.cards[by ?? what]?.owner ?? context.records.cards[what]?.owner ?? '',
    since: since ?? context.asOf,
    closes:
      by === null
        ? 'putting its file back; one that is not needed any more is emptied, and that is reviewed'
        : `a review of ${by} as it is now, or putting it back`,
    ...(by === null ? {} : { toReview: [by] }),
    due: null,
    raisedByHand: false,
  }))

const begins = (context: ItemContext, { begins: set }: HistoryFacts): OpenItem[] =>
  set === null
    ? []
    : [
        {
          id: itemId('begins', set.commit.slice(0, 12)),
          kind: 'begins',
          title: `The history of the campaign was made to begin on ${set.since}: what lay before counts for nothing`,
          about: [],
          gates: Object.keys(context.records.gates),
          owner: set.by,
          since: set.since,
          closes: 'a review of shared/campaign.yaml as it is now',
          toReview: [idOfFile('shared/campaign.yaml')],
          due: null,
          raisedByHand: false,
        },
      ]

/** Empty where history is not known: nothing rests on what nobody can say. */
export const historyItems = (context: ItemContext): OpenItem[] => {
  const { history: facts, until, runs } = context
  if (!facts) return []
  const items = [
    ...runs.flatMap((run) => [
      ...changed(context, run),
      ...gone(context, run),
      ...voided(context, facts, run),
    ]),
    ...runs
      .filter(stillCounts)
      .flatMap((run) => [
        ...notReviewed(context, facts, run),
        ...limitMoved(context, run),
        ...limitWithReading(context, run),
      ]),
    ...lost(context, facts),
    ...thinned(context, facts),
    ...begins(context, facts),
  ]
  // What came about after a meeting held nothing when it decided.
  return until === undefined ? items : items.filter(({ since }) => since <= context.asOf)
}
